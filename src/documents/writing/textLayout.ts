import { isMap, isScalar, isSeq, type Node, type Pair } from 'yaml';
import { parsedSpan } from '../yaml/node.ts';

// Offsets, columns and line ends of a text as they stand. Offsets are UTF-16 units; columns count from 0.

const BYTE_ORDER_MARK = '\uFEFF';

export function columnOf(text: string, offset: number): number {
  const start = offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
  return offset - start - (start === 0 && text.startsWith(BYTE_ORDER_MARK) ? 1 : 0);
}

/** The end of the line that holds the offset, before its line break. */
export function lineEnd(text: string, offset: number): number {
  const feed = text.indexOf('\n', offset);
  if (feed < 0) return text.length;
  return text[feed - 1] === '\r' ? feed - 1 : feed;
}

/** The line break at an offset, or at the end of a text the first one in it. */
export function lineBreakAt(text: string, offset: number): '\n' | '\r\n' {
  const next = text.indexOf('\n', offset);
  const feed = next < 0 ? text.indexOf('\n') : next;
  return text[feed - 1] === '\r' ? '\r\n' : '\n';
}

/** Written within brackets, or a scalar: what it says ends where its range does. */
export const isFlow = (node: Node): boolean =>
  isScalar(node) || ((isMap(node) || isSeq(node)) && node.flow === true);

/** Where the text of a node, or of a key and its value, ends. */
export function contentEnd(part: Node | Pair): number {
  if ('key' in part) return contentEnd((part.value ?? part.key) as Node);
  if (!isFlow(part) && (isMap(part) || isSeq(part))) return contentEnd(part.items.at(-1) as Node | Pair);
  return parsedSpan(part).end;
}

/** The end of the last line of a node, behind a comment that stands on that line. */
export function endOfLastLine(text: string, node: Node): number {
  // The range of a block of text (`|`, `>`) ends behind its last line break.
  return lineEnd(text, contentEnd(node) - 1);
}

/** Moves past the comment lines that follow at once and are indented by more than `column`: they belong to what precedes. */
export function pastComments(text: string, end: number, column: number): number {
  const comment = /\r?\n( *)#.*/y;
  for (let at = end; ; at = lineEnd(text, comment.lastIndex)) {
    comment.lastIndex = at;
    const found = comment.exec(text);
    if (found === null || (found[1] ?? '').length <= column) return at;
  }
}

/** Puts spaces before each line but the first; empty lines stay empty. */
export const indentRest = (lines: string, spaces: number): string =>
  lines.replace(/\n(?!\n|$)/g, `\n${' '.repeat(spaces)}`);
