import { BANK, ENGINE, familyOf } from '../layout/family.ts';
import { part } from '../layout/makePart.ts';
import type { Part } from '../layout/part.ts';
import { valveGearParts } from './valveGear/parts.ts';
import { oilPumpParts } from './wholeEngine/parts.ts';

const [MAIN, CRANKPIN, CYLINDER] = [familyOf('main'), familyOf('crankpin'), familyOf('cylinder')];

/** Every part that something is measured of, or that it depends on; and words for several of them together. */
export const parts: readonly Part[] = [
  part('crankshaft', 'crankshaft', ENGINE, {
    also: ['crank'],
    material: ['crankshaft'],
    from: ['main_journal', 'crankpin', 'thrust_journal'],
  }),
  part('main_journal', 'main journal', MAIN, {
    ofOnePieceWith: 'crankshaft',
    material: ['crankshaft'],
    sized: { made: 'under' },
  }),
  part('crankpin', 'crankpin', CRANKPIN, {
    ofOnePieceWith: 'crankshaft',
    also: ['rod journal', 'crankpin journal', 'crank pin'],
    material: ['crankshaft'],
    sized: { made: 'under' },
  }),
  part('thrust_journal', 'thrust journal', ENGINE, {
    ofOnePieceWith: 'crankshaft',
    also: ['thrust face'],
    material: ['crankshaft'],
    sized: {},
  }),
  part('block', 'block', ENGINE, {
    also: ['cylinder block'],
    material: ['block'],
    from: ['cylinder', 'main_housing'],
  }),
  part('main_housing', 'main housing', MAIN, {
    boredInto: 'block',
    also: ['main bearing housing'],
    material: ['block'],
    from: ['main_cap'],
    sized: {},
  }),
  part('main_cap', 'main cap', MAIN, { also: ['main bearing cap'], material: ['caps', 'block'] }),
  part('main_bolt', 'main bolt', MAIN, {
    isFastener: true,
    also: ['main stud', 'main cap bolt', 'main cap stud'],
  }),
  part('main_shell', 'main shell', MAIN, {
    also: ['main bearing', 'main bearing shell'],
    material: ['shells'],
    sized: { made: 'under', fits: 'main_journal', liesIn: 'main_housing' },
  }),
  part('main', 'main', MAIN, { from: ['main_journal', 'main_shell', 'main_housing'] }),
  part('thrust_washer', 'thrust washer', ENGINE, { also: ['thrust bearing', 'thrust shell'], sized: {} }),
  part('thrust_cap', 'thrust cap', ENGINE, { also: ['thrust bearing cap'] }),
  part('rod', 'connecting rod', CYLINDER, {
    also: ['rod', 'con rod'],
    material: ['rods'],
    from: ['rod_housing'],
    runsOn: 'crankpin',
  }),
  part('rod_housing', 'rod housing', CYLINDER, {
    ofOnePieceWith: 'rod',
    also: ['rod cap', 'big end', 'big end housing', 'rod bearing housing'],
    material: ['rods'],
    sized: {},
    runsOn: 'crankpin',
  }),
  part('rod_bolt', 'rod bolt', CYLINDER, {
    isFastener: true,
    also: ['rod stud', 'big end bolt', 'connecting rod bolt'],
  }),
  part('rod_shell', 'rod shell', CYLINDER, {
    also: [
      'rod bearing',
      'rod bearing shell',
      'big end bearing',
      'big end shell',
      'big end bearing shell',
      'connecting rod bearing',
    ],
    material: ['shells'],
    sized: { made: 'under', fits: 'crankpin', liesIn: 'rod_housing' },
    runsOn: 'crankpin',
  }),
  part('shell', 'shell', ENGINE, {
    also: ['bearing', 'bearing shell'],
    from: ['main_shell', 'rod_shell', 'thrust_washer'],
  }),
  part('cylinder', 'cylinder', CYLINDER, {
    also: ['liner', 'sleeve', 'cylinder liner', 'cylinder sleeve', 'cylinder bore', 'bore'],
    material: ['liners', 'block'],
    boughtAs: 'liner',
    sized: { made: 'over' },
  }),
  part('piston', 'piston', CYLINDER, { material: ['pistons'], sized: { made: 'over', fits: 'cylinder' } }),
  part('piston_pin', 'piston pin', CYLINDER, {
    also: ['wrist pin', 'gudgeon pin'],
    material: ['pins'],
    sized: {},
  }),
  part('small_end_bush', 'small end bush', CYLINDER, {
    plural: 'small end bushes',
    also: ['rod bush', 'small end bushing'],
    sized: {},
  }),
  part('ring', 'ring', familyOf('ring'), {
    also: ['piston ring'],
    material: ['rings'],
    sized: { inSets: true, fits: 'cylinder' },
  }),
  part('head_gasket', 'head gasket', BANK, {}),
  part('spacer_plate', 'spacer plate', BANK, {}),
  part('flywheel', 'flywheel', ENGINE, { also: ['flexplate'] }),
  part('flywheel_housing', 'flywheel housing', ENGINE, { also: ['bell housing'] }),
  part('damper', 'damper', ENGINE, { also: ['vibration damper', 'crankshaft pulley'] }),
  ...valveGearParts,
  ...oilPumpParts,
];
