import type { Concession } from '../documents/concessions.ts';
import { type Change, changesBetween } from './change.ts';
import { type LimitChange, limitChanges } from './limitChanges.ts';
import type { ConcessionOf, EngineState } from './state.ts';

/** What changed between two sides of one engine. */
export interface Diff {
  /** Newly out, newly in, real changes, what appeared or disappeared, then the rest. */
  readonly changes: readonly Change[];
  readonly limits: readonly LimitChange[];
  readonly concessions: readonly ConcessionChange[];
}

export interface ConcessionChange extends ConcessionOf {
  readonly state: 'opened' | 'closed';
}

export const diffStates = (a: EngineState, b: EngineState): Diff => ({
  changes: [...changesBetween(a, b)].sort(byWeight),
  limits: limitChanges(a, b),
  concessions: concessionChanges(a, b),
});

/** Whether nothing at all is different: every row the same, no limit and no concession changed. */
export const isSame = ({ changes, limits, concessions }: Diff): boolean =>
  changes.every(({ state }) => state === 'same') && limits.length === 0 && concessions.length === 0;

function rankOf({ crossed, state }: Change): number {
  if (crossed !== null) return crossed === 'out' ? 0 : 1;
  return { real: 2, appeared: 3, disappeared: 4, within: 5, same: 6 }[state];
}

/** The sort is stable: of equal weight they stay in the order of the sheet. */
const byWeight = (x: Change, y: Change): number => rankOf(x) - rankOf(y);

function concessionChanges(a: EngineState, b: EngineState): readonly ConcessionChange[] {
  const [before, after] = [keysOf(a), keysOf(b)];
  return [
    ...b.concessions
      .filter((each) => !before.has(keyOf(each.concession)))
      .map((each) => ({ ...each, state: 'opened' as const })),
    ...a.concessions
      .filter((each) => !after.has(keyOf(each.concession)))
      .map((each) => ({ ...each, state: 'closed' as const })),
  ];
}

const keysOf = ({ concessions }: EngineState): ReadonlySet<string> =>
  new Set(concessions.map(({ concession }) => keyOf(concession)));

const keyOf = ({ measure, positions, upTo, downTo }: Concession): string =>
  [measure.id, positions.join(','), upTo?.amount.n, downTo?.amount.n].join(' ');
