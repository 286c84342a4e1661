import type { Characteristic } from '../characteristics/characteristic.ts';
import { behindWhatTheyFollow } from '../characteristics/registry.ts';
import type { Stage } from '../documents/session/stage.ts';
import {
  BLOCK,
  BORES_AND_PISTONS,
  CRANKSHAFT,
  CYLINDERS_CLOSED,
  ENDS_OF_THE_CRANKSHAFT,
  FLANGE,
  HEAD,
  HEAD_BEFORE_ITS_VALVES_ARE_OUT,
  LASH_COLD,
  LINERS,
  LINERS_IN,
  MAINS,
  OIL_PUMP,
  PISTON_PINS,
  PISTONS_IN,
  PUMP_TIMED,
  RODS,
  RUNNING,
  SHAPE_OF_THE_CRANKSHAFT,
  type Step,
  TESTS_OF_PARTS,
  TIMING_DRIVE,
  VALVES_MOVED,
  VOLUMES,
  WEIGHTS,
} from './measuringSteps.ts';

/**
 * The order of assembly, parts before what is worked out of them: what is listed twice stands where it is listed last.
 * Common practice, no source.
 */
const PARTS: readonly Step[] = [
  TESTS_OF_PARTS,
  BLOCK,
  LINERS,
  SHAPE_OF_THE_CRANKSHAFT,
  WEIGHTS,
  MAINS,
  CRANKSHAFT,
  RODS,
  PISTON_PINS,
  BORES_AND_PISTONS,
  OIL_PUMP,
  HEAD,
  VOLUMES,
];

/** The same parts as they come off an engine, the top first: no main cap is off before the rods are out. */
const PARTS_AS_THEY_COME_OFF: readonly Step[] = [
  TESTS_OF_PARTS,
  HEAD,
  BORES_AND_PISTONS,
  PISTON_PINS,
  RODS,
  LINERS,
  OIL_PUMP,
  MAINS,
  CRANKSHAFT,
  SHAPE_OF_THE_CRANKSHAFT,
  WEIGHTS,
  BLOCK,
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
