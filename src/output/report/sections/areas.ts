import type { Characteristic } from '../../../characteristics/characteristic.ts';

/** The order in which an engine is gone through on a sheet, by the parts that figures are of. */
const AREAS: readonly (readonly [title: string, parts: string])[] = [
  [
    'Crankshaft and main bearings',
    'crankshaft main_journal crankpin main_shell main thrust_journal thrust_washer thrust_cap damper',
  ],
  ['Rods', 'rod rod_housing rod_shell rod_bolt small_end_bush'],
  ['Block and cylinders', 'block main_housing main_cap cylinder spacer_plate cam_housing lifter_bore'],
  ['Pistons and rings', 'piston piston_pin ring'],
  [
    'Cylinder head and valves',
    'head head_gasket valve valve_guide valve_guide_hole valve_seat valve_seat_hole valve_spring inner_valve_spring',
  ],
  [
    'Valve gear and timing',
    'lifter pushrod rocker rocker_shaft cam_journal cam_bearing camshaft cam_thrust_plate lobe gear gear_shaft timing_chain',
  ],
  ['Oil pump', 'pump_gear pump_body pump_shaft relief_valve relief_spring oil_pump'],
];

const ASSEMBLED = 'Assembled';
const OTHERS = 'Other figures';

export const AREA_TITLES: readonly string[] = [...AREAS.map(([title]) => title), ASSEMBLED, OTHERS];

/** Figures of parts put together stand by themselves, last. */
export function areaOf({ of, isAssemblyFigure }: Characteristic): string {
  if (isAssemblyFigure) return ASSEMBLED;
  return AREAS.find(([, parts]) => of !== undefined && parts.split(' ').includes(of))?.[0] ?? OTHERS;
}
