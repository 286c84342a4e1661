import { comparePlaces } from '../diagnostic/place.ts';
import type { Concession } from '../documents/session/concessions.ts';
import { toNumber } from '../quantity/fraction.ts';
import { type Change, changesBetween, isInside, isOut } from './change.ts';
import { type LimitChange, limitChanges } from './limitChanges.ts';
import { type RewrittenSession, rewrittenSessions } from './rewritten.ts';
import type { ConcessionOf, EngineState } from './state.ts';

/** What one side of a comparison is. */
export interface ComparedState {
  readonly kind: 'session' | 'revision' | 'worktree';
  /** As it is named in print. */
  readonly name: string;
  readonly commit: string | null;
}

/** One engine of a comparison. */
export interface EngineDiff {
  /** Where it lies now, or lay before where it is gone. */
  readonly path: string;
  readonly name: string;
  readonly diff: Diff;
  /** In which the numbers are printed. */
  readonly unitFor: EngineState['unitFor'];
}

/** An engine of which a side cannot be read whole: what is missing there would look like a change. */
export interface NotCompared {
  readonly path: string;
  /** The sides that a document with a problem is on. */
  readonly sides: readonly ComparedState[];
}

/** What changed between two sides of one engine. */
export interface Diff {
  /** These and the limits are in the order of the sheet. */
  readonly changes: readonly Change[];
  readonly limits: readonly LimitChange[];
  readonly concessions: readonly ConcessionChange[];
  readonly rewritten: readonly RewrittenSession[];
}

export interface ConcessionChange extends ConcessionOf {
  readonly state: 'opened' | 'closed';
}

export function diffStates(a: EngineState, b: EngineState): Diff {
  const changes = changesBetween(a, b);
  return {
    changes,
    limits: limitChanges(changes),
    concessions: concessionChanges(a, b),
    rewritten: rewrittenSessions(a, b),
  };
}

/** Whether nothing is different: every row the same and judged alike, no limit, no concession and no record changed. */
export const isSame = ({ changes, limits, concessions, rewritten }: Diff): boolean =>
  changes.every(({ state, crossed }) => state === 'same' && crossed === null) &&
  [limits, concessions, rewritten].every(({ length }) => length === 0);

/** What became of a verdict, where that is news. What was undecided and is out now is newly out as well. */
export type News = 'newly out' | 'newly undecided' | 'newly in';

export function newsOf({ a, b }: Change): News | null {
  const [before, after] = [a?.row.judgement.verdict ?? null, b?.row.judgement.verdict ?? null];
  if (before === null || after === null) return null;
  if (isOut(after)) return isOut(before) ? null : 'newly out';
  if (after === 'undecided') return before === 'undecided' ? null : 'newly undecided';
  return isInside(before) ? null : 'newly in';
}

function concessionChanges(a: EngineState, b: EngineState): readonly ConcessionChange[] {
  const [before, after] = [keysOf(a), keysOf(b)];
  const byPlace = (x: ConcessionOf, y: ConcessionOf): number =>
    comparePlaces(x.concession.place, y.concession.place);
  return [
    ...b.concessions
      .filter((each) => !before.has(keyOf(each.concession)))
      .sort(byPlace)
      .map((each) => ({ ...each, state: 'opened' as const })),
    ...a.concessions
      .filter((each) => !after.has(keyOf(each.concession)))
      .sort(byPlace)
      .map((each) => ({ ...each, state: 'closed' as const })),
  ];
}

const keysOf = ({ concessions }: EngineState): ReadonlySet<string> =>
  new Set(concessions.map(({ concession }) => keyOf(concession)));

/** By what it accepts, in whatever unit that is written. */
const keyOf = ({ measure, positions, upTo, downTo }: Concession): string =>
  JSON.stringify([measure.id, positions.map(({ key }) => key).sort(), limitKey(upTo), limitKey(downTo)]);

const limitKey = (limit: Concession['upTo']): string | null =>
  limit === undefined ? null : toNumber(limit.amount).toPrecision(12);
