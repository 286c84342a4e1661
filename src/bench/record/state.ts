import { keyOf, type PlannedPoint } from '../points.ts';
import type { GaugeZero } from '../sessionText.ts';

/** What was read at one point. */
export interface Taken {
  readonly point: PlannedPoint;
  /** As a session writes it, with the digits as typed; more than one where the point was read again. */
  readonly texts: readonly string[];
  readonly note: string | undefined;
  readonly instrument: string | undefined;
  readonly zero: GaugeZero | undefined;
}

/** Where an entry stands. Made anew by each event; the same events always give the same state. */
export interface RecordState {
  readonly points: readonly PlannedPoint[];
  /** The point that is asked for; as many as there are points when none is left. */
  readonly at: number;
  /** By the key of the point, in the order in which they were first taken. */
  readonly taken: ReadonlyMap<string, Taken>;
  /** Places left out on purpose: `~`, with the reason as its note. A reading that is taken after all comes first. */
  readonly leftOut: ReadonlyMap<string, Taken>;
  /** What each characteristic is measured with from here on. */
  readonly instruments: ReadonlyMap<string, string>;
  readonly zeros: ReadonlyMap<string, GaugeZero>;
  /** The next reading is one more of the point before, and does not replace it. */
  readonly again: boolean;
}

/** What a line came to. Events are kept on disk one a line, so they say everything and mean it for ever. */
export type RecordEvent =
  | { readonly do: 'take'; readonly at: number; readonly text: string; readonly typed: string }
  | { readonly do: 'skip' }
  | { readonly do: 'leave'; readonly at: number; readonly until: number; readonly reason: string }
  | { readonly do: 'back' }
  | { readonly do: 'again' }
  | { readonly do: 'go'; readonly at: number }
  | { readonly do: 'note'; readonly text: string }
  | { readonly do: 'with'; readonly measure: string; readonly instrument: string }
  | { readonly do: 'zero'; readonly measure: string; readonly zero: GaugeZero | undefined };

export const startRecord = (
  points: readonly PlannedPoint[],
  instruments: ReadonlyMap<string, string>,
  zeros: ReadonlyMap<string, GaugeZero> = new Map(),
): RecordState => ({ points, at: 0, taken: new Map(), leftOut: new Map(), instruments, zeros, again: false });

export function applyEvent(state: RecordState, event: RecordEvent): RecordState {
  switch (event.do) {
    case 'take':
      return take(state, event.at, event.text);
    case 'skip':
      return moveTo(state, state.at + 1);
    case 'leave':
      return leave(state, event);
    case 'back':
      return moveTo(state, state.at - 1);
    case 'go':
      return moveTo(state, event.at);
    case 'again':
      return { ...moveTo(state, state.at - 1), again: true };
    case 'note':
      return withNote(state, event.text);
    case 'with':
      return { ...state, instruments: new Map(state.instruments).set(event.measure, event.instrument) };
    case 'zero':
      return { ...state, zeros: withZero(state.zeros, event.measure, event.zero) };
  }
}

const moveTo = (state: RecordState, at: number): RecordState => ({
  ...state,
  at: Math.max(0, Math.min(state.points.length, at)),
  again: false,
});

function take(state: RecordState, at: number, text: string): RecordState {
  const point = state.points[at];
  if (point === undefined) return state;
  const before = state.taken.get(keyOf(point));
  const taken: Taken = {
    point,
    texts: state.again && before !== undefined ? [...before.texts, text] : [text],
    // A reading that is put right keeps what was noted of its place.
    note: before?.note,
    instrument: state.instruments.get(point.measure),
    zero: state.zeros.get(point.measure),
  };
  return { ...moveTo(state, at + 1), taken: new Map(state.taken).set(keyOf(point), taken) };
}

function leave(state: RecordState, { at, until, reason }: RecordEvent & { do: 'leave' }): RecordState {
  const leftOut = new Map(state.leftOut);
  for (const point of state.points.slice(at, until)) {
    const [instrument, zero] = [state.instruments.get(point.measure), state.zeros.get(point.measure)];
    leftOut.set(keyOf(point), { point, texts: ['~'], note: reason, instrument, zero });
  }
  return { ...moveTo(state, until), leftOut };
}

/** What goes into the session: readings, and places left out on purpose. */
export const toWrite = ({ taken, leftOut }: RecordState): ReadonlyMap<string, Taken> =>
  new Map([...leftOut, ...taken]);

/** Of the reading that was taken last before the point that is asked for. */
export const lastTaken = (state: RecordState): Taken | undefined => {
  const point = state.points[state.again ? state.at : state.at - 1];
  return point === undefined ? undefined : state.taken.get(keyOf(point));
};

function withNote(state: RecordState, note: string): RecordState {
  const last = lastTaken(state);
  if (last === undefined) return state;
  return { ...state, taken: new Map(state.taken).set(keyOf(last.point), { ...last, note }) };
}

function withZero(
  zeros: ReadonlyMap<string, GaugeZero>,
  measure: string,
  zero: GaugeZero | undefined,
): ReadonlyMap<string, GaugeZero> {
  const next = new Map(zeros);
  if (zero === undefined) next.delete(measure);
  else next.set(measure, zero);
  return next;
}
