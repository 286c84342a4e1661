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
import { behindWhatTheyFollow } from '../characteristics/registry.ts';
import { rods } from '../characteristics/rods.ts';
import { camEvents } from '../characteristics/valveGear/events.ts';
import { valveGear } from '../characteristics/valveGear/valveGear.ts';
import { balance } from '../characteristics/wholeEngine/balance.ts';
import { oilPump } from '../characteristics/wholeEngine/oilPump.ts';
import { shopTests } from '../characteristics/wholeEngine/shopTests.ts';
import type { Stage } from '../documents/session/stage.ts';

type Step = readonly string[];

const idsOf = (characteristics: readonly Characteristic[]): Step => characteristics.map(({ id }) => id);

/** What the engine shows when it runs and is hot. */
const RUNNING: Step = [
  'oil_pressure_idle',
  'oil_pressure_running',
  'relief_opening_pressure',
  'crankcase_pressure',
  'ignition_timing',
  'valve_lash_hot',
];

/** Of the closed engine, turned by its starter or filled with air. */
const CYLINDERS_CLOSED: Step = [
  'compression_pressure',
  'compression_share',
  'leak_down_supply',
  'leak_down_held',
  'leak_down',
];

const PUMP_TIMED: Step = ['injection_timing'];

const LASH_COLD: Step = ['valve_lash_cold'];

/** What is bolted to the ends of the crankshaft, the engine still together. */
const ENDS_OF_THE_CRANKSHAFT: Step = [
  'flywheel_face_runout',
  'flywheel_bore_runout',
  'flywheel_housing_bore_runout',
  'flywheel_housing_face_runout',
  'damper_runout',
];
const FLANGE: Step = ['crankshaft_flange_runout', 'crankshaft_pilot_runout'];

/** The valves as the camshaft moves them, the rocker cover off. */
const VALVES_MOVED: Step = [
  'lifter_lift',
  'valve_lift',
  'rocker_ratio',
  ...idsOf(camEvents),
  'valve_to_piston_clearance',
];

/** The drive of the camshaft, the timing cover off. */
const TIMING_DRIVE: Step = ['timing_chain_slack', 'gear_backlash', 'gear_end_play', 'camshaft_end_play'];

const PISTONS_IN: Step = ['piston_protrusion', 'deck_clearance', 'piston_travel'];

const LINERS_IN: Step = ['liner_protrusion', 'liner_protrusion_spread', 'liner_protrusion_step'];

const HEAD_BEFORE_ITS_VALVES_ARE_OUT: Step = [
  'valve_seat_leak_test',
  'valve_recession',
  'valve_spring_installed_height',
  'retainer_to_seal_clearance',
];

const MAINS: Step = [...idsOf(mains), ...idsOf(shells.filter(({ of }) => of === 'main_shell'))];

const CRANKSHAFT: Step = [...idsOf(crankshaft), 'crankshaft_runout', ...FLANGE];

const RODS: Step = [
  ...idsOf(rodShape),
  ...idsOf(rods),
  ...idsOf(shells.filter(({ of }) => of === 'rod_shell')),
];

const BORES_AND_PISTONS: Step = [...idsOf(cylinders), ...idsOf(rings), ...idsOf(pistons), ...PISTONS_IN];

const OIL_PUMP: Step = [...idsOf(oilPump), 'relief_spring_free_length', 'relief_spring_load'];

const HEAD: Step = [...idsOf(head), ...idsOf(valveGear), 'valve_seat_leak_test'];

const VOLUMES: Step = [...idsOf(chambers), ...idsOf(displacement), ...idsOf(volumes)];

/**
 * The order of assembly, parts before what is worked out of them: what is listed twice stands where it is listed last.
 * Common practice, no source.
 */
const PARTS: readonly Step[] = [
  idsOf(shopTests),
  idsOf(block),
  idsOf(liners),
  idsOf(crankShape),
  idsOf(balance),
  MAINS,
  CRANKSHAFT,
  RODS,
  idsOf(pistonPins),
  BORES_AND_PISTONS,
  OIL_PUMP,
  HEAD,
  VOLUMES,
];

/** The same parts as they come off an engine, the top first: no main cap is off before the rods are out. */
const PARTS_AS_THEY_COME_OFF: readonly Step[] = [
  idsOf(shopTests),
  HEAD,
  BORES_AND_PISTONS,
  idsOf(pistonPins),
  RODS,
  idsOf(liners),
  OIL_PUMP,
  MAINS,
  CRANKSHAFT,
  idsOf(crankShape),
  idsOf(balance),
  idsOf(block),
  VOLUMES,
];

/** How the engine is closed up and started; what nobody listed comes before it. */
const CLOSING: readonly Step[] = [
  TIMING_DRIVE,
  VALVES_MOVED,
  ENDS_OF_THE_CRANKSHAFT,
  LASH_COLD,
  PUMP_TIMED,
  CYLINDERS_CLOSED,
  RUNNING,
];

/**
 * From the running engine to its bearings, as it is opened: each figure before what it needs is taken off. Sizes of
 * parts, and fits that only sizes tell, come after. Common practice, no source.
 */
const TEARDOWN: readonly Step[] = [
  RUNNING,
  PUMP_TIMED,
  CYLINDERS_CLOSED,
  LASH_COLD,
  VALVES_MOVED,
  ENDS_OF_THE_CRANKSHAFT,
  FLANGE,
  ['crankshaft_end_play', 'turning_torque'],
  TIMING_DRIVE,
  PISTONS_IN,
  LINERS_IN,
  HEAD_BEFORE_ITS_VALVES_ARE_OUT,
  ['valve_rock', 'valve_stem_clearance', 'lifter_clearance', 'rocker_clearance'],
  ['rod_side_clearance'],
  ['pump_body_clearance', 'pump_end_clearance', 'pump_tip_clearance', 'pump_gear_backlash'],
  ['rod_bearing_clearance'],
  ['piston_clearance', 'ring_side_clearance', 'piston_pin_clearance', 'small_end_clearance'],
  ['main_bearing_clearance'],
  ['cam_bearing_clearance', 'pump_shaft_clearance', 'relief_plunger_clearance'],
];

/** Sorts into the order of the bench at a stage; what says after what it is measured stands behind that. */
export function inBenchOrder(all: readonly Characteristic[], stage: Stage): readonly Characteristic[] {
  const inOrder = isTakenApart(stage)
    ? sorted(sorted(all, behindTheirInputs(all, PARTS_AS_THEY_COME_OFF)), placesIn(TEARDOWN))
    : sorted(all, behindTheirInputs(all, PARTS, CLOSING));
  return behindWhatTheyFollow(inOrder);
}

/** An engine that stands or is taken apart is measured as it is before any part of it. */
const isTakenApart = (stage: Stage): boolean => stage === 'teardown' || stage === 'service';

type Places = ReadonlyMap<string, number>;

const placesIn = (steps: readonly Step[]): Places => new Map(steps.flat().map((id, index) => [id, index]));

const sorted = (all: readonly Characteristic[], places: Places): readonly Characteristic[] => {
  const placeOf = ({ id }: Characteristic): number => places.get(id) ?? Number.POSITIVE_INFINITY;
  // Infinities are equal, and their difference is none.
  return all.toSorted((a, b) => (placeOf(a) === placeOf(b) ? 0 : placeOf(a) - placeOf(b)));
};

/** Each behind all that it is worked out from; what nobody listed stands behind the parts. */
function behindTheirInputs(
  all: readonly Characteristic[],
  parts: readonly Step[],
  after: readonly Step[] = [],
): Places {
  const listed = placesIn([...parts, ...after]);
  const behindParts = parts.flat().length - 0.5;
  const byId = new Map(all.map((each) => [each.id, each]));
  const places = new Map<string, number>();
  const placeOf = (id: string): number => {
    const known = places.get(id);
    const found = byId.get(id);
    if (known !== undefined || found === undefined) return known ?? 0;
    const own = listed.get(id) ?? behindParts;
    // A formula that leads back to itself must end.
    places.set(id, own);
    const inputs = found.derivations.flatMap(({ inputs: from }) => from.map(placeOf));
    const place = Math.max(own, ...inputs.map((input) => input + STEP_BEHIND));
    places.set(id, place);
    return place;
  };
  for (const { id } of all) placeOf(id);
  return places;
}

/** So little that nothing else comes between. */
const STEP_BEHIND = 0.001;
