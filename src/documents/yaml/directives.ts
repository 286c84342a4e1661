import type { Span } from './node.ts';
import type { Report } from './problem.ts';

/** Lines that are not empty; a byte order mark stands before the first. */
const LINE = /(?!^\ufeff)[^\n]+/g;
const VERSION = /^%YAML[ \t]+1\.2[ \t]*(#.*)?\r?$/;
const BLANK_OR_COMMENT = /^[ \t]*(#.*)?\r?$/;

/**
 * Lines beginning with `%` before the document. With one of them a file could ask for YAML 1.1, where `1:30` is 90
 * and `no` is false; only a single `%YAML 1.2`, which changes nothing, may stay. The parser passes over some of them.
 */
export function checkDirectives(text: string, report: Report): void {
  let isNamed = false;
  for (const { 0: line, index: start } of text.matchAll(LINE)) {
    if (BLANK_OR_COMMENT.test(line)) continue;
    if (!line.startsWith('%')) return;
    if (isNamed || !VERSION.test(line)) refuse({ start, end: start + line.length }, report);
    else isNamed = true;
  }
}

function refuse(span: Span, report: Report): void {
  report(
    'directive',
    span,
    'a directive line (%) is not used here',
    'leave the line out: documents are YAML 1.2',
  );
}
