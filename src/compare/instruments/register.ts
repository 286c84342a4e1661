import type { RegisteredInstrument } from '../../documents/engine/instruments.ts';
import type { Judgeable } from '../state.ts';
import { type Evidence, evidenceOf } from './evidence.ts';
import { takenWith, tightenedWith } from './taken.ts';
import { standingOf, type UndecidedRow } from './undecided.ts';

/** An instrument of a shop's registers, and what the shop's documents know of it. */
export interface RegisterEntry {
  readonly instrument: RegisteredInstrument;
  /** On the day that is asked about; null where it states no day, or none is asked about. */
  readonly isOverdue: boolean | null;
  /** Up to that day, the earliest first. */
  readonly evidence: readonly Evidence[];
  /** At how many places it read, itself or as what a gauge was set with; and how many joints it tightened. */
  readonly places: number;
  readonly joints: number;
  /** What is undecided with it, and how much of the doubt of all that is undecided it has. */
  readonly undecided: number;
  readonly share: number;
}

export interface Register {
  /** The day that is asked about; undefined where none is, and no session has one. */
  readonly day: string | undefined;
  readonly entries: readonly RegisterEntry[];
  /** Verdicts that the engines stand with. */
  readonly verdicts: number;
  readonly undecided: readonly UndecidedRow[];
}

/** Without a day that of the latest session: nobody looks at a clock. */
export function registerOf(engines: readonly Judgeable[], asked: string | undefined): Register {
  const day = asked ?? latestDay(engines);
  const standing = engines.map((each) => standingOf(each, day));
  const undecided = standing.flatMap((each) => each.undecided);
  return {
    day,
    entries: registered(engines).map((each) => entryOf(each, engines, day, undecided)),
    verdicts: standing.reduce((sum, { verdicts }) => sum + verdicts, 0),
    undecided,
  };
}

const latestDay = (engines: readonly Judgeable[]): string | undefined =>
  engines
    .flatMap(({ engine }) => engine.sessions.map(({ date }) => date))
    .sort()
    .at(-1);

/** Each once, in the order of the registers, though many engines are served by it. */
function registered(engines: readonly Judgeable[]): readonly RegisteredInstrument[] {
  const all = engines.flatMap(({ engine }) => [...engine.instruments.values()]);
  return [...new Map(all.map((each) => [`${each.place.path}:${each.place.line} ${each.id}`, each])).values()];
}

function entryOf(
  instrument: RegisteredInstrument,
  engines: readonly Judgeable[],
  day: string | undefined,
  undecided: readonly UndecidedRow[],
): RegisterEntry {
  const { id, due } = instrument;
  // Another register may have another one of that name.
  const served = engines.filter(
    ({ engine }) => engine.instruments.get(id)?.place.path === instrument.place.path,
  );
  const always = { instrument: id, has: () => true };
  const own = undecided.filter(({ engine }) => served.some((each) => each.engine === engine));
  const shares = own.flatMap(({ shares }) => shares.find(([name]) => name === id)?.[1] ?? []);
  return {
    instrument,
    isOverdue: due === undefined || day === undefined ? null : due < day,
    evidence: evidenceOf(id, served).filter((each) => day === undefined || each.day <= day),
    places: served
      .flatMap(({ engine }) => takenWith(engine, always))
      .reduce((sum, { positions }) => sum + positions.length, 0),
    joints: served.flatMap(({ engine }) => tightenedWith(engine, always)).length,
    undecided: shares.length,
    share: undecided.length === 0 ? 0 : shares.reduce((sum, share) => sum + share, 0) / undecided.length,
  };
}
