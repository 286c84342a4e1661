import { block, head } from '../characteristics/block/blockAndHead.ts';
import { chambers } from '../characteristics/block/chambers.ts';
import { displacement } from '../characteristics/block/displacement.ts';
import { liners } from '../characteristics/block/liners.ts';
import { volumes } from '../characteristics/block/volumes.ts';
import type { Characteristic } from '../characteristics/characteristic.ts';
import { crankShape } from '../characteristics/crankAndRods/crankShape.ts';
import { rodShape } from '../characteristics/crankAndRods/rodShape.ts';
import { shells } from '../characteristics/crankAndRods/shells.ts';
import { crankshaft } from '../characteristics/crankshaft.ts';
import { cylinders } from '../characteristics/cylinders.ts';
import { mains } from '../characteristics/mains.ts';
import { pistonPins } from '../characteristics/pistons/pistonPins.ts';
import { pistons } from '../characteristics/pistons/pistons.ts';
import { rings } from '../characteristics/pistons/rings.ts';
import { rods } from '../characteristics/rods.ts';
import { camEvents } from '../characteristics/valveGear/events.ts';
import { valveGear } from '../characteristics/valveGear/valveGear.ts';
import { balance } from '../characteristics/wholeEngine/balance.ts';
import { oilPump } from '../characteristics/wholeEngine/oilPump.ts';
import { shopTests } from '../characteristics/wholeEngine/shopTests.ts';

export type Step = readonly string[];

const idsOf = (characteristics: readonly Characteristic[]): Step => characteristics.map(({ id }) => id);

/** What the engine shows when it runs and is hot. */
export const RUNNING: Step = [
  'oil_pressure_idle',
  'oil_pressure_running',
  'relief_opening_pressure',
  'crankcase_pressure',
  'ignition_timing',
  'valve_lash_hot',
];

/** Of the closed engine, turned by its starter or filled with air. */
export const CYLINDERS_CLOSED: Step = [
  'compression_pressure',
  'compression_share',
  'leak_down_supply',
  'leak_down_held',
  'leak_down',
];

export const PUMP_TIMED: Step = ['injection_timing'];

export const LASH_COLD: Step = ['valve_lash_cold'];

/** What is bolted to the ends of the crankshaft, the engine still together. */
export const ENDS_OF_THE_CRANKSHAFT: Step = [
  'flywheel_face_runout',
  'flywheel_bore_runout',
  'flywheel_housing_bore_runout',
  'flywheel_housing_face_runout',
  'damper_runout',
];
export const FLANGE: Step = ['crankshaft_flange_runout', 'crankshaft_pilot_runout'];

/** The valves as the camshaft moves them, the rocker cover off. */
export const VALVES_MOVED: Step = [
  'lifter_lift',
  'valve_lift',
  'rocker_ratio',
  ...idsOf(camEvents),
  'valve_to_piston_clearance',
];

/** The drive of the camshaft, the timing cover off. */
export const TIMING_DRIVE: Step = [
  'timing_chain_slack',
  'gear_backlash',
  'gear_end_play',
  'camshaft_end_play',
];

export const PISTONS_IN: Step = ['piston_protrusion', 'deck_clearance', 'piston_travel'];

export const LINERS_IN: Step = ['liner_protrusion', 'liner_protrusion_spread', 'liner_protrusion_step'];

export const HEAD_BEFORE_ITS_VALVES_ARE_OUT: Step = [
  'valve_seat_leak_test',
  'valve_recession',
  'valve_spring_installed_height',
  'retainer_to_seal_clearance',
];

export const MAINS: Step = [...idsOf(mains), ...idsOf(shells.filter(({ of }) => of === 'main_shell'))];

export const CRANKSHAFT: Step = [...idsOf(crankshaft), 'crankshaft_runout', ...FLANGE];

export const RODS: Step = [
  ...idsOf(rodShape),
  ...idsOf(rods),
  ...idsOf(shells.filter(({ of }) => of === 'rod_shell')),
];

export const BORES_AND_PISTONS: Step = [
  ...idsOf(cylinders),
  ...idsOf(rings),
  ...idsOf(pistons),
  ...PISTONS_IN,
];

export const OIL_PUMP: Step = [...idsOf(oilPump), 'relief_spring_free_length', 'relief_spring_load'];

export const HEAD: Step = [...idsOf(head), ...idsOf(valveGear), 'valve_seat_leak_test'];

export const VOLUMES: Step = [...idsOf(chambers), ...idsOf(displacement), ...idsOf(volumes)];

export const TESTS_OF_PARTS: Step = idsOf(shopTests);

export const BLOCK: Step = idsOf(block);

export const LINERS: Step = idsOf(liners);

export const SHAPE_OF_THE_CRANKSHAFT: Step = idsOf(crankShape);

export const WEIGHTS: Step = idsOf(balance);

export const PISTON_PINS: Step = idsOf(pistonPins);
