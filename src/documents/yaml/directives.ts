import type { Span } from './node.ts';
import type { Report } from './problem.ts';
import { BYTE_ORDER_MARK } from './sourceText.ts';

const VERSION = /^%YAML[ \t]+1\.2[ \t]*(#.*)?\r?$/;
const BLANK_OR_COMMENT = /^[ \t]*(#.*)?\r?$/;

/**
 * Lines beginning with `%` before the document. With one of them a file could ask for YAML 1.1, where `1:30` is 90
 * and `no` is false; only a single `%YAML 1.2`, which changes nothing, may stay. The parser passes over some of them.
 */
export function checkDirectives(text: string, report: Report): void {
  let start = text.startsWith(BYTE_ORDER_MARK) ? 1 : 0;
  for (let versions = 0; start < text.length; ) {
    const newline = text.indexOf('\n', start);
    const end = newline < 0 ? text.length : newline;
    const line = text.slice(start, end);
    if (VERSION.test(line)) versions += 1;
    if (line.startsWith('%') && (versions > 1 || !VERSION.test(line))) refuse({ start, end }, report);
    if (!line.startsWith('%') && !BLANK_OR_COMMENT.test(line)) return;
    start = end + 1;
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
