import { toNumber } from '../../quantity/fraction.ts';
import type { Joint } from '../joint.ts';
import type { ResolvedAction, TightenStep } from '../plan.ts';
import type { AmountRange } from '../sequence.ts';
import { clampLoadOfTorque, percentOfProof } from './clampLoad.ts';
import { clampLoadOfFriction } from './friction.ts';
import type { Lubrication } from './lubrication.ts';
import { clampLoadOfTurn, loadOfStretchN } from './stretch.ts';
import type { Thread } from './threadForm.ts';

/** What one bolt is expected to clamp with after a pass, in newtons. An estimate, never a measurement. */
export interface PassLoad {
  readonly loadN: number;
  readonly leastN: number;
  readonly greatestN: number;
  /** Of the proof load: the estimate, and the most that its scatter allows. */
  readonly percent: number | undefined;
  readonly greatestPercent: number | undefined;
  /** By the friction formula, where the document states coefficients. */
  readonly byFrictionN: number | undefined;
  readonly beyondYield: boolean;
  readonly assumptions: readonly string[];
}

/** The load before a turn, and how far it was turned since. */
interface Snug {
  readonly load: PassLoad;
  readonly turnDeg: number;
}

/** The load after each step, or undefined where there is no saying. Steps of one list, in order. */
export function loadsAfter(
  steps: readonly TightenStep[],
  joint: Joint,
  lubrication: Lubrication = joint.lubrication,
): readonly (PassLoad | undefined)[] {
  const snug = new Map<string, Snug | undefined>();
  return steps.map(({ action, fasteners }) => {
    const [first] = fasteners;
    const before = first === undefined ? undefined : snug.get(first);
    const after = stateAfter(action, before, joint, lubrication);
    for (const name of fasteners) snug.set(name, after.snug);
    return after.load;
  });
}

interface After {
  readonly load: PassLoad | undefined;
  readonly snug: Snug | undefined;
}

function stateAfter(
  action: ResolvedAction,
  before: Snug | undefined,
  joint: Joint,
  lubrication: Lubrication,
): After {
  if (action.kind === 'check') return { load: undefined, snug: before };
  if (action.kind === 'loosen' || joint.thread === undefined) return { load: undefined, snug: undefined };
  if (action.kind === 'turn') return turned(action.angle, before, joint);
  const load =
    action.kind === 'to'
      ? loadOfTorque(action.torque, joint.thread, joint, lubrication)
      : loadOfWindow(action.stretch, joint.thread, joint);
  return { load, snug: load && { load, turnDeg: 0 } };
}

/** The clamp load of a torque: at the middle of its window, with the scatter at both ends. */
export function loadOfTorque(
  torque: AmountRange,
  thread: Thread,
  joint: Pick<Joint, 'strength' | 'friction'>,
  lubrication: Lubrication,
): PassLoad {
  const at = (torqueNm: number) => clampLoadOfTorque(torqueNm, thread.diameterM, lubrication);
  const [low, high] = [toNumber(torque.least), toNumber(torque.greatest)];
  const middle = at((low + high) / 2);
  const byFriction = joint.friction && clampLoadOfFriction((low + high) / 2, thread, joint.friction);
  return {
    ...withPercent(middle.loadN, at(low).leastN, at(high).greatestN, thread, joint),
    byFrictionN: byFriction?.loadN,
    beyondYield: false,
    assumptions: [...middle.assumptions, ...(byFriction?.assumptions ?? [])],
  };
}

function withPercent(
  loadN: number,
  leastN: number,
  greatestN: number,
  thread: Thread,
  { strength }: Pick<Joint, 'strength'>,
) {
  const percent = (newtons: number): number | undefined =>
    strength === undefined ? undefined : percentOfProof(newtons, thread, strength);
  return { loadN, leastN, greatestN, percent: percent(loadN), greatestPercent: percent(greatestN) };
}

const METRES_IN_A_LENGTH_STEP = 1e-10;

function loadOfWindow(stretch: AmountRange, thread: Thread, joint: Joint): PassLoad | undefined {
  if (joint.sections.length === 0) return undefined;
  const loadOf = (of: AmountRange['least']): number =>
    loadOfStretchN(toNumber(of) * METRES_IN_A_LENGTH_STEP, joint.sections);
  const [low, high] = [loadOf(stretch.least), loadOf(stretch.greatest)];
  return {
    ...withPercent((low + high) / 2, low, high, thread, joint),
    byFrictionN: undefined,
    beyondYield: false,
    assumptions: ['load of a stretch: F = stretch × A E / L, below yield, modulus 207 GPa'],
  };
}

/** Turns add up from the snug torque; what the snug torque scatters, the turned load scatters too. */
function turned(angle: AmountRange, before: Snug | undefined, joint: Joint): After {
  const { thread, strength, sections } = joint;
  if (before === undefined || thread === undefined) return { load: undefined, snug: undefined };
  const turnDeg = before.turnDeg + (toNumber(angle.least) + toNumber(angle.greatest)) / 2;
  const snug = { load: before.load, turnDeg };
  if (strength === undefined || sections.length === 0) return { load: undefined, snug };
  const from = (snugLoadN: number) => clampLoadOfTurn({ turnDeg, snugLoadN, sections }, thread, strength);
  const middle = from(before.load.loadN);
  const load: PassLoad = {
    ...withPercent(
      middle.loadN,
      from(before.load.leastN).loadN,
      from(before.load.greatestN).loadN,
      thread,
      joint,
    ),
    byFrictionN: undefined,
    beyondYield: middle.beyondYield,
    assumptions: middle.assumptions,
  };
  return { load, snug };
}
