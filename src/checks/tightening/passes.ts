import type { LoggedPass } from '../../documents/tightening/loggedPass.ts';
import { add, compare, equals, type Fraction, subtract } from '../../quantity/fraction.ts';
import type { TightenStep } from '../../torque/plan.ts';
import { type AmountRange, isShare } from '../../torque/sequence.ts';

/** One pass of a sequence; percentages of different final torques make several steps of it. */
export interface PlannedPass {
  /** Counted from 1. */
  readonly pass: number;
  readonly steps: readonly TightenStep[];
}

/** A logged pass and the planned one that it was; undefined where the sequence has no such pass. */
export interface MatchedPass {
  readonly logged: LoggedPass;
  readonly planned: PlannedPass | undefined;
  /** It stands before or behind passes that it should not. */
  readonly outOfOrder: boolean;
}

type WrenchError = (torque: Fraction) => Fraction;

/**
 * Which pass of the sequence each logged pass was: first as many as agree in turn, then those that agree but
 * stand elsewhere or do a part of a pass again, then those of one kind between the same neighbours, whose
 * figures are wrong.
 */
export function matchPasses(
  planned: readonly PlannedPass[],
  logged: readonly LoggedPass[],
  error: WrenchError,
): readonly MatchedPass[] {
  const found = inTurn(planned, logged, error);
  const taken = new Set(found.values());
  const outOfOrder = new Set<LoggedPass>();
  const free = (): readonly LoggedPass[] => logged.filter((each) => !found.has(each));
  const take = (each: LoggedPass, pass: PlannedPass | undefined): boolean => {
    if (pass === undefined) return false;
    found.set(each, pass);
    taken.add(pass);
    return true;
  };
  for (const each of free()) {
    const elsewhere = planned.find((pass) => !taken.has(pass) && agrees(pass, each, error));
    if (take(each, elsewhere)) outOfOrder.add(each);
  }
  for (const each of free()) {
    const again = planned.findLast((pass) => agrees(pass, each, error));
    const [after, before] = neighboursOf(each, logged, found);
    if (again !== undefined && take(each, again)) {
      if (again.pass < after) outOfOrder.add(each);
      continue;
    }
    const like = planned.filter((pass) => !taken.has(pass) && isOfOneKind(pass, each));
    take(
      each,
      like.find(({ pass }) => pass > after && pass < before),
    );
  }
  return logged.map((each) => ({
    logged: each,
    planned: found.get(each),
    outOfOrder: outOfOrder.has(each),
  }));
}

/** The longest row of passes that agree one after the other. */
function inTurn(
  planned: readonly PlannedPass[],
  logged: readonly LoggedPass[],
  error: WrenchError,
): Map<LoggedPass, PlannedPass> {
  const lengths = logged.map(() => planned.map(() => 0));
  const at = (i: number, j: number): number => lengths[i]?.[j] ?? 0;
  const fits = (i: number, j: number): boolean => {
    const [each, pass] = [logged[i], planned[j]];
    return each !== undefined && pass !== undefined && agrees(pass, each, error);
  };
  for (let i = logged.length - 1; i >= 0; i--) {
    for (let j = planned.length - 1; j >= 0; j--) {
      const row = lengths[i];
      if (row !== undefined)
        row[j] = fits(i, j) ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  }
  const found = new Map<LoggedPass, PlannedPass>();
  for (let i = 0, j = 0; i < logged.length && j < planned.length; ) {
    const [each, pass] = [logged[i], planned[j]];
    if (each !== undefined && pass !== undefined && fits(i, j)) {
      found.set(each, pass);
      i += 1;
      j += 1;
    } else if (at(i + 1, j) >= at(i, j + 1)) i += 1;
    else j += 1;
  }
  return found;
}

/** The planned passes between which a logged one lies, by the passes logged before and after it. */
function neighboursOf(
  each: LoggedPass,
  logged: readonly LoggedPass[],
  found: ReadonlyMap<LoggedPass, PlannedPass>,
): readonly [number, number] {
  const index = logged.indexOf(each);
  const before = logged.slice(0, index).flatMap((other) => found.get(other)?.pass ?? []);
  const after = logged.slice(index + 1).flatMap((other) => found.get(other)?.pass ?? []);
  return [before.at(-1) ?? 0, after[0] ?? Number.POSITIVE_INFINITY];
}

const isOfOneKind = ({ steps }: PlannedPass, { action }: LoggedPass): boolean =>
  steps.some((step) => step.action.kind === action.kind);

/** Of one kind, for some of the same fasteners, and to the same figure as far as a wrench can tell. */
function agrees({ steps }: PlannedPass, logged: LoggedPass, error: WrenchError): boolean {
  return steps.some(
    (step) =>
      step.action.kind === logged.action.kind &&
      sharesFasteners(step, logged) &&
      sameFigure(step, logged, error),
  );
}

function sharesFasteners({ fasteners }: TightenStep, logged: LoggedPass): boolean {
  const names = loggedNames(logged);
  return names === undefined || fasteners.some((name) => names.has(name));
}

/** Groups have been written out by the reader; undefined where the log speaks of all. */
const loggedNames = ({ fasteners, values }: LoggedPass): ReadonlySet<string> | undefined => {
  if (fasteners !== undefined) return new Set(fasteners);
  return values.size > 0 ? new Set(values.keys()) : undefined;
};

function sameFigure({ action: plan }: TightenStep, { action }: LoggedPass, error: WrenchError): boolean {
  if (action.kind === 'to' || action.kind === 'check') {
    const planned = plan.kind === action.kind ? plan.torque : undefined;
    if (isShare(action.torque)) {
      return 'percent' in plan && plan.percent !== undefined && equals(plan.percent, action.torque.percent);
    }
    return planned !== undefined && liesWithin(action.torque, planned, error);
  }
  if (action.kind === 'stretch') return true;
  return plan.kind === action.kind && sameAngle(action.angle, plan.angle);
}

const sameAngle = (logged: AmountRange | undefined, planned: AmountRange | undefined): boolean =>
  logged === undefined || planned === undefined
    ? logged === planned
    : compare(logged.least, planned.least) >= 0 && compare(logged.greatest, planned.greatest) <= 0;

/** Inside a window that is widened by the error of the wrench; exactly on its end is inside. */
export const liesWithin = (torque: AmountRange, window: AmountRange, error: WrenchError): boolean =>
  outsideOf(torque, window, error).length === 0;

/** The ends of what was reached that lie outside a window, even with the error of the wrench at that end. */
export const outsideOf = (
  torque: AmountRange,
  window: AmountRange,
  error: WrenchError,
): readonly Fraction[] => [
  ...(compare(add(torque.least, error(torque.least)), window.least) < 0 ? [torque.least] : []),
  ...(compare(subtract(torque.greatest, error(torque.greatest)), window.greatest) > 0
    ? [torque.greatest]
    : []),
];
