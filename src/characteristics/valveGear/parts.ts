import { BANK, ENGINE, familyOf } from '../../layout/family.ts';
import { part } from '../../layout/makePart.ts';
import type { Part } from '../../layout/part.ts';

const [VALVE, CAM_BEARING, GEAR] = [familyOf('valve'), familyOf('cam bearing'), familyOf('gear')];

/** The parts of the valve gear, from the camshaft to the seats. */
export const valveGearParts: readonly Part[] = [
  part('camshaft', 'camshaft', ENGINE, {
    also: ['cam'],
    material: ['camshaft'],
    from: ['cam_journal', 'lobe'],
  }),
  part('cam_journal', 'cam journal', CAM_BEARING, {
    ofOnePieceWith: 'camshaft',
    material: ['camshaft'],
    sized: { made: 'under' },
  }),
  part('cam_bearing', 'cam bearing', CAM_BEARING, {
    also: ['camshaft bearing', 'cam bush', 'cam bushing'],
    sized: { made: 'under', fits: 'cam_journal' },
  }),
  part('cam_housing', 'cam housing', CAM_BEARING, {
    boredInto: 'block',
    also: ['cam bearing housing', 'cam tunnel'],
    material: ['block'],
  }),
  part('cam_thrust_plate', 'cam thrust plate', ENGINE, { also: ['cam thrust washer', 'cam thrust pin'] }),
  part('lobe', 'cam lobe', familyOf('lobe'), {
    ofOnePieceWith: 'camshaft',
    also: ['lobe'],
    material: ['camshaft'],
  }),
  part('gear', 'timing gear', GEAR, { also: ['gear', 'idler gear', 'idler'] }),
  part('gear_shaft', 'gear shaft', GEAR, { also: ['idler shaft'] }),
  part('timing_chain', 'timing chain', ENGINE, { also: ['chain', 'timing belt'] }),
  part('distributor', 'distributor', ENGINE, { also: ['magneto'] }),
  part('injection_pump', 'injection pump', ENGINE, {}),
  part('head', 'cylinder head', BANK, {
    also: ['head'],
    material: ['head'],
    carries: ['valve', 'valve_guide', 'valve_guide_hole', 'valve_seat', 'valve_seat_hole', 'valve_spring'],
    calledBy: familyOf('cylinder'),
  }),
  part('valve', 'valve', VALVE, { material: ['valves'], sized: {} }),
  part('valve_guide', 'valve guide', VALVE, {
    also: ['guide'],
    material: ['guides'],
    sized: { fits: 'valve_guide_hole' },
  }),
  part('valve_guide_hole', 'valve guide hole', VALVE, {
    boredInto: 'head',
    also: ['guide hole'],
    material: ['head'],
    sized: { made: 'over' },
  }),
  part('valve_seat', 'valve seat', VALVE, {
    also: ['seat', 'valve seat insert', 'seat insert'],
    sized: { fits: 'valve_seat_hole' },
  }),
  part('valve_seat_hole', 'valve seat hole', VALVE, {
    boredInto: 'head',
    also: ['seat hole', 'seat counterbore'],
    material: ['head'],
    sized: { made: 'over' },
  }),
  part('valve_spring', 'valve spring', VALVE, { from: ['inner_valve_spring'] }),
  part('inner_valve_spring', 'inner valve spring', VALVE, {}),
  part('lifter', 'lifter', VALVE, {
    also: ['tappet', 'cam follower', 'follower', 'valve lifter'],
    sized: { fits: 'lifter_bore' },
  }),
  part('lifter_bore', 'lifter bore', VALVE, {
    boredInto: 'block',
    also: ['tappet bore', 'follower bore'],
    material: ['block'],
    sized: { made: 'over' },
  }),
  part('pushrod', 'pushrod', VALVE, { also: ['push rod'] }),
  part('rocker', 'rocker', VALVE, { also: ['rocker arm'] }),
  part('rocker_shaft', 'rocker shaft', VALVE, {}),
];
