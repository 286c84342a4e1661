import { READING_WORDS } from '../../layout/reservedWords.ts';
import { add, divide, fraction, mean, subtract, ZERO } from '../../quantity/fraction.ts';
import { type Amount, type DocumentContext, report } from '../amount.ts';
import { childOf, entriesOf, itemsOf, scalarOf, textOf } from '../yaml/access.ts';
import type { Entry, Node, Span } from '../yaml/node.ts';
import type { Point, ReadAmount } from './reading.ts';

/** The keys of a map that is one point; a map with others names stations. */
export const POINT_KEYS: ReadonlySet<string> = new Set<string>(READING_WORDS);

export const isPoint = (node: Node): boolean =>
  node.kind === 'scalar' ||
  (node.kind === 'map' &&
    node.entries.size > 0 &&
    [...node.entries.keys()].every((key) => POINT_KEYS.has(key)));

/** Of a map by station its entries: all that is no part of a point. */
export const stationsOf = (node: Node): readonly Entry[] =>
  entriesOf(node).filter(({ key }) => !POINT_KEYS.has(key));

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

/** `under 0.004`, `over 0.006`, or `0.003 to 0.004`. */
function readRange(
  text: string,
  span: Span,
  read: ReadAmount,
  pointer: string,
  context: DocumentContext,
): Point | undefined {
  const under = /^under (.+)$/.exec(text)?.[1];
  if (under !== undefined) return between(read('0', span), read(under, span), text, span, pointer, context);
  const over = /^over (.+)$/.exec(text)?.[1];
  if (over !== undefined) return beyond(read(over, span), text, pointer);
  const [, low, high] = /^(.+) to (.+)$/.exec(text) ?? [];
  if (low === undefined || high === undefined) return undefined;
  return between(read(low, span), read(high, span), text, span, pointer, context);
}

/** Nothing tells how far: the mark that it is beyond stands for it. */
function beyond(mark: Amount | undefined, written: string, pointer: string): Point | undefined {
  const point = single(mark, pointer);
  return point && { ...point, written, range: { below: ZERO, above: undefined } };
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
  const half = divide(width, fraction(2));
  return {
    amount: divide(add(low.amount, high.amount), fraction(2)),
    written,
    // The middle may fall between two digits.
    lastDigit: divide(high.lastDigit, fraction(2)),
    range: { below: half, above: half },
    pointer,
    span,
  };
}
