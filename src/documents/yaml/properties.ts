import type { Alias, Node as ParsedNode } from 'yaml';
import { quoted } from '../../diagnostic/quoted.ts';
import { parsedSpan, type Span } from './node.ts';
import type { Report } from './problem.ts';

const WRITE_OUT = 'write the value out wherever it is meant';

/** An alias can make a small file enormous, and hides what a reading was from whoever reads the file. */
export function refuseAlias(alias: Alias, report: Report): Span {
  const span = parsedSpan(alias);
  report(
    'alias',
    span,
    `${quoted(`*${alias.source}`)} is an alias, and aliases are not used here`,
    WRITE_OUT,
  );
  return span;
}

/** Anchors and tags before a value. `span` is where the value itself stands. */
export function refuseProperties(
  node: ParsedNode & { anchor?: string; tag?: string },
  span: Span,
  text: string,
  report: Report,
): void {
  if (node.anchor !== undefined) {
    const anchor = wordBefore(text, `&${node.anchor}`, span);
    report(
      'alias',
      anchor,
      `${quoted(`&${node.anchor}`)} is an anchor, and anchors are not used here`,
      WRITE_OUT,
    );
  }
  if (node.tag !== undefined) {
    const tag = wordBefore(text, '!', span);
    report(
      'tag',
      tag,
      `${quoted(text.slice(tag.start, tag.end))} is a tag, and tags are not used here`,
      'leave the tag out',
    );
  }
}

/** The nearest word before a value that holds the mark. */
function wordBefore(text: string, mark: string, span: Span): Span {
  const found = text.lastIndexOf(mark, span.start);
  let start = found;
  while (start > 0 && !/[\s,[\]{}]/.test(text.charAt(start - 1))) start -= 1;
  let end = found;
  while (end < span.start && !/[\s,[\]{}]/.test(text.charAt(end))) end += 1;
  return { start, end };
}
