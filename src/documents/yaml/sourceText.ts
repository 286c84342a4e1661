import type { SourceText } from './node.ts';

export const BYTE_ORDER_MARK = '\ufeff';

/** Lines end with LF or CRLF. The line starts are worked out when the first place is asked for: most files need none. */
export function sourceText(path: string, text: string): SourceText {
  const first = text.startsWith(BYTE_ORDER_MARK) ? 1 : 0;
  let starts: readonly number[] | undefined;
  const position = (offset: number) => {
    starts ??= lineStarts(text, first);
    const inside = Math.max(first, Math.min(offset, text.length));
    const index = lastAtOrBefore(starts, inside);
    return { line: index + 1, column: inside - (starts[index] as number) + 1 };
  };
  return {
    path,
    text,
    place: (span) => {
      const from = position(span.start);
      const to = position(Math.max(span.start, span.end));
      return { path, line: from.line, column: from.column, endLine: to.line, endColumn: to.column };
    },
  };
}

function lineStarts(text: string, first: number): readonly number[] {
  const starts = [first];
  for (let end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', end + 1)) starts.push(end + 1);
  return starts;
}

function lastAtOrBefore(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] as number) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}
