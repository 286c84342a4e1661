import { didYouMean } from '../../diagnostic/suggestion.ts';
import { refusedControl } from '../../documents/yaml/readScalar.ts';
import { positionMeant } from '../../layout/meant.ts';
import { findPosition } from '../../layout/readKey.ts';
import { keyOf } from '../points.ts';
import { GAUGE_COUNTS, type GaugeZero } from '../sessionText.ts';
import { type Expecting, expectationAt } from './expectation.ts';
import { lastTaken, type RecordEvent, type RecordState } from './state.ts';
import { readTyped } from './typedReading.ts';

/** What a line asks for. */
export type TypedRequest =
  | { readonly kind: 'event'; readonly event: RecordEvent; readonly completed: boolean }
  | { readonly kind: 'finish' }
  | { readonly kind: 'help' }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'unclear'; readonly why: string };

interface Command {
  readonly names: readonly string[];
  readonly usage: string;
  readonly does: string;
  readonly ask: (rest: string, state: RecordState, around: Expecting) => TypedRequest;
}

const event = (each: RecordEvent): TypedRequest => ({ kind: 'event', event: each, completed: false });
const unclear = (why: string): TypedRequest => ({ kind: 'unclear', why });
const WITHOUT_CONTROLS = 'it holds a control character: write it without';

/** One list: the help is printed from it. */
export const COMMANDS: readonly Command[] = [
  {
    names: ['b', 'back'],
    usage: 'back',
    does: 'back to the place before',
    ask: () => event({ do: 'back' }),
  },
  {
    names: ['s', 'skip'],
    usage: 's REASON',
    does: 'leave this place out; without a reason it is asked for again',
    ask: (reason, state) => leaveOut(reason, state, state.at + 1),
  },
  {
    names: ['ss'],
    usage: 'ss REASON',
    does: 'leave out the rest of this characteristic; without a reason it is asked for again',
    ask: (reason, state) => leaveOut(reason, state, endOfBlock(state)),
  },
  {
    names: ['r', 'repeat'],
    usage: 'r',
    does: 'read the last place once more: both readings are kept',
    ask: (_, state, around) => askAgain(state, around),
  },
  {
    names: ['n', 'note'],
    usage: 'n TEXT',
    does: 'a note on the last reading',
    ask: (text, state) => askNote(text, state),
  },
  {
    names: ['at'],
    usage: 'at 5',
    does: 'go on at position 5',
    ask: (text, state, around) => askPosition(text, state, around),
  },
  {
    names: ['w', 'with'],
    usage: 'w mic-3-4',
    does: 'the instrument from here on',
    ask: (name, state, around) => askInstrument(name, state, around),
  },
  {
    names: ['z', 'zero'],
    usage: 'z 3.2500 tenths',
    does: 'the gauge was set to a master: deviations from here on (also thou, hundredths, or neither); z off ends it',
    ask: (text, state) => askZero(text, state),
  },
  {
    names: ['f', 'finish'],
    usage: 'finish',
    does: 'write the session and check it',
    ask: () => ({ kind: 'finish' }),
  },
  { names: ['?', 'h', 'help'], usage: '?', does: 'this list', ask: () => ({ kind: 'help' }) },
];

/** A command or a reading; never throws, whatever was typed. */
export function askedBy(line: string, state: RecordState, around: Expecting): TypedRequest {
  const text = line.trim();
  if (text === '') return { kind: 'nothing' };
  const [first = '', ...rest] = text.split(/\s+/);
  const command = COMMANDS.find(({ names }) => names.includes(first.toLowerCase()));
  if (command !== undefined) return command.ask(rest.join(' '), state, around);
  return askReading(text, state, around);
}

function askReading(text: string, state: RecordState, around: Expecting): TypedRequest {
  const point = state.points[state.at];
  const characteristic = point && around.registry.find(point.measure);
  if (point === undefined || characteristic === undefined)
    return unclear('nothing is left to measure: finish');
  const typed = readTyped(text, {
    quantity: characteristic.quantity,
    zero: state.zeros.get(point.measure),
    expected: expectationAt(point, state, around),
    takesRanges: !characteristic.family.isNamedBySession,
  });
  if (!typed.ok) return unclear(typed.why);
  return {
    kind: 'event',
    event: { do: 'take', at: state.at, text: typed.text, typed: text },
    completed: typed.completed,
  };
}

function endOfBlock({ points, at }: RecordState): number {
  const next = points.findIndex((point, index) => index > at && point.measure !== points[at]?.measure);
  return next < 0 ? points.length : next;
}

/** With a reason nobody asks for these places again; without one the entry only goes on behind them. */
function leaveOut(reason: string, { points, at, taken }: RecordState, until: number): TypedRequest {
  if (at >= points.length) return unclear('nothing is left to measure: finish');
  if (reason === '') return event(until === at + 1 ? { do: 'skip' } : { do: 'go', at: until });
  if (refusedControl(reason) !== undefined) return unclear(WITHOUT_CONTROLS);
  const read = points.slice(at, until).find((point) => taken.has(keyOf(point)));
  return read === undefined
    ? event({ do: 'leave', at, until, reason })
    : unclear(`${read.position.name} has a reading: n REASON notes something of it`);
}

function askAgain(state: RecordState, around: Expecting): TypedRequest {
  const last = lastTaken(state);
  if (last === undefined)
    return unclear('no reading was typed before this place: there is nothing to repeat');
  if (around.registry.find(last.point.measure)?.family.isNamedBySession)
    return unclear('a step is read once: it cannot be repeated');
  if (last.texts.some((text) => /to|under|over|go/.test(text))) return unclear('a range cannot be repeated');
  return event({ do: 'again' });
}

function askNote(text: string, state: RecordState): TypedRequest {
  if (text === '') return unclear('write the note behind it: n read at the wide end');
  if (refusedControl(text) !== undefined) return unclear(WITHOUT_CONTROLS);
  return lastTaken(state) === undefined
    ? unclear('no reading was typed before this place: there is nothing to note')
    : event({ do: 'note', text });
}

function askPosition(
  name: string,
  { points, at }: RecordState,
  { engine, registry }: Expecting,
): TypedRequest {
  const measure = points[Math.min(at, points.length - 1)]?.measure ?? '';
  const family = registry.find(measure)?.family;
  const wanted = family && findPosition(engine.document.layout, family, name);
  const found = points.findIndex((point) => point.measure === measure && point.position === wanted);
  if (found >= 0) return event({ do: 'go', at: found });
  const names = [
    ...new Set(points.filter((point) => point.measure === measure).map((each) => each.position.name)),
  ];
  const asked = names.join(', ');
  const meant = family && positionMeant(name, engine.document.layout, family, names);
  return wanted !== undefined
    ? unclear(`${name} is not asked for here, only ${asked}: correct what is in the session in its file`)
    : unclear(`there is no ${name} here: ${meant ?? asked}`);
}

function askInstrument(name: string, { points, at }: RecordState, { engine }: Expecting): TypedRequest {
  const point = points[at];
  if (point === undefined) return unclear('nothing is left to measure');
  const known = [...engine.instruments.keys()];
  if (engine.instruments.has(name)) return event({ do: 'with', measure: point.measure, instrument: name });
  if (known.length === 0) return unclear('the register of instruments is empty: instruments.yaml');
  return unclear(
    name === ''
      ? `name an instrument of the register: ${known.join(', ')}`
      : `${name} is not in the register: ${didYouMean(name, known) ?? known.join(', ')}`,
  );
}

function askZero(text: string, { points, at }: RecordState): TypedRequest {
  const measure = points[at]?.measure;
  if (measure === undefined) return unclear('nothing is left to measure');
  if (text === 'off') return event({ do: 'zero', measure, zero: undefined });
  const [, setTo, counts] =
    /^((?:0|[1-9]\d*)(?:\.\d+)?|journal)(?: (tenths|thou|hundredths))?$/.exec(text) ?? [];
  if (setTo === undefined) return unclear('write the size of the master: z 3.2500, or z 3.2500 tenths');
  const zero: GaugeZero = { setTo, counts: GAUGE_COUNTS.find((each) => each === counts) };
  return event({ do: 'zero', measure, zero });
}
