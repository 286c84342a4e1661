import {
  add,
  divide,
  type Fraction,
  fraction,
  mean,
  multiply,
  parseDecimal,
  subtract,
} from '../../quantity/fraction.ts';
import { toBase, unitNamed } from '../../quantity/units.ts';
import {
  type Amount,
  type DocumentContext,
  isPlainNumber,
  lastDigitOf,
  moved,
  parseAmount,
  readAmount,
  report,
} from '../amount.ts';
import type { Measure } from '../measure.ts';
import { childOf, itemsOf, scalarOf, textAt, textOf } from '../yaml/access.ts';
import type { Node, Span } from '../yaml/node.ts';
import type { Point, ReadAmount } from './reading.ts';

/** What the plain numbers under `in:` count. */
const SHORTHAND: Readonly<Record<string, Fraction>> = {
  tenths: toBase(parseDecimal('0.0001'), unitNamed('in')),
  thou: toBase(parseDecimal('0.001'), unitNamed('in')),
  hundredths: toBase(parseDecimal('0.01'), unitNamed('mm')),
};

/** The keys of a map that is one point; a map with others names stations. */
export const POINT_KEYS: ReadonlySet<string> = new Set([
  'value',
  'repeat',
  'go',
  'no_go',
  'note',
  'was',
  'why',
]);

export const isPoint = (node: Node): boolean =>
  node.kind === 'scalar' ||
  (node.kind === 'map' &&
    node.entries.size > 0 &&
    [...node.entries.keys()].every((key) => POINT_KEYS.has(key)));

/** How the numbers of a block are meant: in the document's unit, as shorthand, as deviations from a master. */
export function amountReader(block: Node, measure: Measure, context: DocumentContext): ReadAmount {
  const step = SHORTHAND[textAt(block, 'in') ?? ''];
  const from = startingAmount(block, measure, context);
  return (text, span) => {
    const plain = parsePlain(text, step);
    const amount =
      plain === undefined ? parseAmount(text, span, measure.quantity, context) : { ...plain, span };
    return amount === undefined || from === undefined ? amount : moved(amount, from);
  };
}

function parsePlain(text: string, step: Fraction | undefined): Omit<Amount, 'span'> | undefined {
  if (step === undefined || !isPlainNumber(text)) return undefined;
  return {
    amount: multiply(parseDecimal(text), step),
    unit: unitNamed('in'),
    written: text,
    lastDigit: lastDigitOf(text, step),
  };
}

/** What the gauge was zeroed in: a size, or each journal. `base` is arithmetic only, and is neither. */
export function setToOf(
  block: Node,
  measure: Measure,
  context: DocumentContext,
): Fraction | 'journal' | undefined {
  const setTo = childOf(block, 'set_to');
  if (textOf(setTo) === 'journal') return 'journal';
  return readAmount(setTo, measure.quantity, context)?.amount;
}

function startingAmount(block: Node, measure: Measure, context: DocumentContext): Fraction | undefined {
  const setTo = childOf(block, 'set_to');
  if (textOf(setTo) === 'journal') return zeroedOnJournal(measure, setTo, context);
  return readAmount(setTo ?? childOf(block, 'base'), measure.quantity, context)?.amount;
}

/** A gauge zeroed in a micrometer locked at the journal reads the clearance itself. */
function zeroedOnJournal(measure: Measure, setTo: Node | undefined, context: DocumentContext): undefined {
  if ((measure.figure ?? 'clearance') === 'clearance' || setTo === undefined) return undefined;
  return report(
    context,
    'value',
    setTo.span,
    `a gauge that was set to the journal reads clearances, and this block measures ${measure.id}`,
    'write measure: with the clearance, such as main_bearing_clearance',
  );
}

/** One point, or undefined where it was not taken or cannot be read (which is then reported). */
export function readPoint(
  node: Node,
  read: ReadAmount,
  pointer: string,
  context: DocumentContext,
): Point | undefined {
  const value = node.kind === 'map' ? childOf(node, 'value') : node;
  if (node.kind === 'map' && node.entries.has('repeat')) return readRepeats(node, read, pointer);
  if (node.kind === 'map' && node.entries.has('go')) return readGoNoGo(node, read, pointer, context);
  const text = textOf(value);
  if (text === undefined || value === undefined) return undefined;
  const point =
    readRange(text, value.span, read, pointer, context) ?? single(read(text, value.span), pointer);
  return point !== undefined && childOf(node, 'was') !== undefined ? { ...point, settled: true } : point;
}

const single = (amount: Amount | undefined, pointer: string): Point | undefined =>
  amount === undefined
    ? undefined
    : {
        amount: amount.amount,
        written: amount.written,
        lastDigit: amount.lastDigit,
        pointer,
        span: amount.span,
      };

function readRepeats(node: Node, read: ReadAmount, pointer: string): Point | undefined {
  const amounts = itemsOf(childOf(node, 'repeat')).flatMap((item) => {
    const scalar = scalarOf(item);
    return (scalar === undefined ? undefined : read(textOf(scalar) ?? '', scalar.span)) ?? [];
  });
  const [first] = amounts;
  if (first === undefined) return undefined;
  const repeats = amounts.map((each) => each.amount);
  return {
    amount: mean(repeats),
    written: amounts.map((each) => each.written).join(', '),
    lastDigit: first.lastDigit,
    repeats,
    pointer,
    span: node.span,
  };
}

function readGoNoGo(
  node: Node,
  read: ReadAmount,
  pointer: string,
  context: DocumentContext,
): Point | undefined {
  const [go, noGo] = ['go', 'no_go'].map((key) => {
    const scalar = scalarOf(childOf(node, key));
    return scalar === undefined ? undefined : read(textOf(scalar) ?? '', scalar.span);
  });
  return between(go, noGo, `${go?.written} go, ${noGo?.written} no go`, node.span, pointer, context);
}

/** `under 0.004`, or `0.003 to 0.004`. */
function readRange(
  text: string,
  span: Span,
  read: ReadAmount,
  pointer: string,
  context: DocumentContext,
): Point | undefined {
  const under = /^under (.+)$/.exec(text)?.[1];
  if (under !== undefined) return between(read('0', span), read(under, span), text, span, pointer, context);
  const [, low, high] = /^(.+) to (.+)$/.exec(text) ?? [];
  if (low === undefined || high === undefined) return undefined;
  return between(read(low, span), read(high, span), text, span, pointer, context);
}

function between(
  low: Amount | undefined,
  high: Amount | undefined,
  written: string,
  span: Span,
  pointer: string,
  context: DocumentContext,
): Point | undefined {
  if (low === undefined || high === undefined) return undefined;
  const width = subtract(high.amount, low.amount);
  if (width.n <= 0n) {
    return report(context, 'value', span, `${written}: the second figure is not greater than the first`);
  }
  return {
    amount: divide(add(low.amount, high.amount), fraction(2)),
    written,
    // The middle may fall between two digits.
    lastDigit: divide(high.lastDigit, fraction(2)),
    halfRange: divide(width, fraction(2)),
    pointer,
    span,
  };
}
