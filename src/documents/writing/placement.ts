import { isMap, isScalar, isSeq, type Node, type Pair, Scalar, type YAMLSeq } from 'yaml';
import { parsedSpan } from '../yaml/node.ts';
import type { Found, PlainNode } from './shape.ts';
import {
  columnOf,
  contentEnd,
  endOfLastLine,
  indentRest,
  isFlow,
  lineBreakAt,
  lineEnd,
  pastComments,
} from './textLayout.ts';

/** The stretch of a text from `start` to `end` and what is to stand there instead. */
export interface Change {
  readonly start: number;
  readonly end: number;
  readonly inserted: string;
}

const STEP = 2;

/** Where an item of a list goes; undefined where the list's layout has no place for it. */
export function placeItem(text: string, { node, key, inFlow }: Found, item: string): Change | undefined {
  if (isSeq(node) && node.items.length > 0) {
    return isFlow(node)
      ? beforeBracket(text, node.items.at(-1), item)
      : afterLastLine(text, node, blockItem(text, node, item));
  }
  if (!isEmpty(node) || isMap(node)) return undefined;
  if (inFlow || key === undefined) return isSeq(node) ? withinEmpty(text, node, item) : undefined;
  return belowKey(text, node, key, `- ${indentRest(item, STEP)}`);
}

/** Where an entry of a map goes. `entry` is the whole of it, `key: value`. */
export function placeEntry(text: string, { node, key, inFlow }: Found, entry: string): Change | undefined {
  if (isMap(node) && node.items.length > 0) {
    return isFlow(node) ? beforeBracket(text, node.items.at(-1), entry) : afterLastLine(text, node, entry);
  }
  if (!isEmpty(node) || isSeq(node)) return undefined;
  if (isMap(node) || inFlow || key === undefined)
    return isMap(node) ? withinEmpty(text, node, entry) : undefined;
  return belowKey(text, node, key, entry);
}

/** Where the text that replaces a scalar goes. */
export function placeScalar(text: string, { node }: Found, replacement: string): Change | undefined {
  if (!isScalar(node) || node.type === Scalar.BLOCK_LITERAL || node.type === Scalar.BLOCK_FOLDED)
    return undefined;
  const { start, end } = parsedSpan(node);
  // A missing value has no room of its own: the colon before it and a comment behind it want a space.
  const before = start === end && !/\s/.test(text.charAt(start - 1)) ? ' ' : '';
  const after = start === end && text[end] === '#' ? ' ' : '';
  return { start, end, inserted: before + replacement + after };
}

const isEmpty = (node: PlainNode): boolean =>
  isScalar(node) ? node.value === null && !node.source : node.items.length === 0;

/** As wide a gap behind the dash as the first item has. */
function blockItem(text: string, list: YAMLSeq, item: string): string {
  const first = parsedSpan(list.items[0] as Node);
  const gap = text.slice(parsedSpan(list).start + 1, first.start);
  const spaces = /^ +$/.test(gap) ? gap.length : 1;
  return `-${' '.repeat(spaces)}${indentRest(item, 1 + spaces)}`;
}

/** New lines below a block, at its own column. */
function afterLastLine(text: string, block: Node, lines: string): Change {
  const column = columnOf(text, parsedSpan(block).start);
  const at = pastComments(text, endOfLastLine(text, block), column);
  return insertion(at, newLines(text, at, column, lines));
}

/** The first lines of a block, below its key; an empty pair of brackets goes, the comment beside it stays. */
function belowKey(text: string, empty: Node, key: Node, lines: string): Change | undefined {
  const { start, end } = parsedSpan(empty);
  if (text.slice(start, end).includes('\n')) return undefined;
  const column = columnOf(text, parsedSpan(key).start);
  const at = pastComments(text, lineEnd(text, end), column);
  const block = newLines(text, at, column + STEP, lines);
  if (start === end) return insertion(at, block);
  const kept = text.slice(end, at);
  // Without a comment behind them the brackets would leave a space at the end of the line.
  const from = kept === '' && text[start - 1] === ' ' ? start - 1 : start;
  return { start: from, end: at, inserted: kept + block };
}

/** Behind the last item within brackets, before whatever comment or space precedes the closing one. */
function beforeBracket(text: string, last: unknown, item: string): Change {
  const at = contentEnd(last as Node | Pair);
  const comma = /^\s*,/.exec(text.slice(at))?.[0];
  return comma === undefined ? insertion(at, `, ${item}`) : insertion(at + comma.length, ` ${item}`);
}

/** A map is written with spaces inside its braces, a list without, unless there are some. */
function withinEmpty(text: string, node: Node, item: string): Change | undefined {
  const { start, end } = parsedSpan(node);
  const inside = text.slice(start + 1, end - 1);
  if (!/^ *$/.test(inside)) return undefined;
  const pad = isMap(node) || inside !== '' ? ' ' : '';
  return { start: start + 1, end: end - 1, inserted: pad + item + pad };
}

const insertion = (at: number, inserted: string): Change => ({ start: at, end: at, inserted });

/** Begins with a line break and ends without one, so that a file without a last line break stays one. */
function newLines(text: string, at: number, column: number, lines: string): string {
  const margin = ' '.repeat(column);
  const lineBreak = lineBreakAt(text, at);
  return lineBreak + (margin + indentRest(lines, column)).replace(/\n/g, lineBreak);
}
