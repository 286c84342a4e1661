import type { JudgingOptions, Row } from '../../checks/judge/row.ts';
import type { Verdict } from '../../checks/judge/verdict.ts';
import { runsOf } from '../../checks/state/run.ts';
import { standingRows } from '../../checks/state/state.ts';
import { leavesOf } from '../../checks/value/route.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { equals, type Fraction } from '../../quantity/fraction.ts';
import { type Judgeable, keyOf } from '../state.ts';
import {
  isWithin,
  type Suspicion,
  type Taken,
  type TightenedWith,
  takenWith,
  tightenedWith,
} from './taken.ts';

/** One characteristic at one position as a run of the engine left it, and as it is with the readings put right. */
export interface Rejudged {
  /** The last session of the run. */
  readonly at: SessionDocument;
  readonly before: Row;
  readonly after: Row;
}

/** What a recall comes to for one engine. */
export interface RecalledEngine extends Judgeable {
  readonly taken: readonly Taken[];
  readonly tightened: readonly TightenedWith[];
  /** Left the shop, and no session says that it came back. */
  readonly isDelivered: boolean;
  /** Those whose verdict is another one, the worst first. */
  readonly changed: readonly Rejudged[];
  /** Another value and the same verdict. */
  readonly moved: readonly Rejudged[];
  /** Worked out from readings that carry the error, which cancels in it. */
  readonly unmoved: readonly Rejudged[];
}

/** The engine with its readings put right: the error, shown minus true, is taken out of those that carry it. */
export function withoutError(engine: Engine, suspicion: Suspicion, error: Fraction): Engine {
  const { instrument, has, range } = suspicion;
  const known = {
    isOn: has,
    at: (amount: Fraction) => (isWithin(amount, range) ? error : undefined),
  };
  const before = engine.knownErrors.get(instrument) ?? [];
  return { ...engine, knownErrors: new Map([...engine.knownErrors, [instrument, [...before, known]]]) };
}

/** Undefined of an engine that never saw the instrument on those days. Without an error nothing is judged again. */
export function recallOf(
  { engine, registry }: Judgeable,
  suspicion: Suspicion,
  error: Fraction | undefined,
  options: JudgingOptions = {},
): RecalledEngine | undefined {
  const taken = takenWith(engine, suspicion);
  const tightened = tightenedWith(engine, suspicion);
  if (taken.length === 0 && tightened.length === 0) return undefined;
  const judged =
    error === undefined
      ? []
      : rejudged({ engine, registry }, withoutError(engine, suspicion, error), taken, options);
  return {
    engine,
    registry,
    taken,
    tightened,
    isDelivered: isDelivered(engine),
    changed: judged.filter(isOtherVerdict).sort(worstFirst),
    moved: judged.filter((each) => !isOtherVerdict(each) && isMoved(each)),
    unmoved: judged.filter((each) => !isOtherVerdict(each) && !isMoved(each) && carries(each, taken)),
  };
}

/** Whether a run is the one that the engine stands in. */
export const isTheLatest = ({ at }: Rejudged, { sessions }: Engine): boolean => sessions.at(-1) === at;

function isDelivered({ document, sessions }: Engine): boolean {
  const { delivered } = document.job;
  return delivered !== undefined && !sessions.some(({ date }) => date > delivered);
}

/** Every row of the runs in which it was used, before and after. */
function rejudged(
  { engine, registry }: Judgeable,
  corrected: Engine,
  taken: readonly Taken[],
  options: JudgingOptions,
): readonly Rejudged[] {
  const used = new Set(taken.map(({ session }) => session));
  return runsOf(engine.sessions).flatMap((run) => {
    if (!run.some((session) => used.has(session))) return [];
    const [before, after] = [engine, corrected].map(
      (each) => standingRows(each, registry, run, options)?.rows ?? [],
    );
    const corrections = new Map((after ?? []).map((row) => [keyOf(row), row]));
    const at = run.at(-1);
    return (before ?? []).flatMap((row) => {
      const put = corrections.get(keyOf(row));
      return put === undefined || at === undefined ? [] : [{ at, before: row, after: put }];
    });
  });
}

const isOtherVerdict = ({ before, after }: Rejudged): boolean =>
  before.judgement.verdict !== after.judgement.verdict;

function isMoved({
  before: {
    routes: [a],
  },
  after: {
    routes: [b],
  },
}: Rejudged): boolean {
  if (a === undefined || b === undefined) return false;
  return !equals(a.least, b.least) || !equals(a.mean, b.mean) || !equals(a.greatest, b.greatest);
}

/** What no reading in question stands behind is not spoken of. */
const carries = (
  {
    before: {
      routes: [judged],
    },
  }: Rejudged,
  taken: readonly Taken[],
): boolean =>
  judged !== undefined &&
  leavesOf(judged.route).some(({ block, readIn, position }) =>
    taken.some(
      (each) =>
        each.block === block &&
        each.session === readIn &&
        each.positions.some((reading) => reading.position === position),
    ),
  );

const WORST_FIRST: readonly (Verdict | null)[] = [
  'out',
  'undecided',
  'accepted',
  'worn',
  'off target',
  'ok',
  null,
  'missing',
  'left out',
];

const worstFirst = (a: Rejudged, b: Rejudged): number =>
  rankOf(a.after) - rankOf(b.after) || rankOf(b.before) - rankOf(a.before);

const rankOf = ({ judgement }: Row): number => WORST_FIRST.indexOf(judgement.verdict);

/** The engine with the worst of it first; of equals the order of the shop. */
export const worstEngineFirst = (a: RecalledEngine, b: RecalledEngine): number => worstOf(a) - worstOf(b);

const worstOf = ({ changed: [worst] }: RecalledEngine): number =>
  worst === undefined ? WORST_FIRST.length : rankOf(worst.after);
