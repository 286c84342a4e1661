import type { Scalar } from 'yaml';
import { escapeHidden, quoted } from '../../diagnostic/quoted.ts';
import { parsedSpan, type ScalarNode, type Span } from './node.ts';
import type { Report } from './problem.ts';
import { refuseProperties } from './properties.ts';
import { readPlain } from './scalar.ts';

/** Controls that text may not hold, however they are written; LF and tab may. */
const CONTROL = /[\0-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]/u;

/** The first control in a text that no document may hold. */
export const refusedControl = (text: string): string | undefined => CONTROL.exec(text)?.[0];

/** A parsed scalar by our own rules: only one written without quotes can be anything but text. */
export function readScalar(parsed: Scalar, text: string, report: Report): ScalarNode {
  const span = parsedSpan(parsed);
  const source = parsed.source ?? '';
  refuseProperties(parsed, span, text, report);
  if (parsed.type === 'PLAIN') return readPlainScalar(source, span, report);
  const refused = parsed.type === 'QUOTE_DOUBLE' && refuseEscapedControls(source, span, text, report);
  const block = parsed.type === 'BLOCK_LITERAL' || parsed.type === 'BLOCK_FOLDED';
  return {
    kind: 'scalar',
    span: block ? withoutLineEnd(span, text) : span,
    value: source,
    source,
    plain: false,
    ...(refused ? { refused } : {}),
  };
}

function readPlainScalar(source: string, span: Span, report: Report): ScalarNode {
  const value = readPlain(source);
  if (value === null || typeof value !== 'object')
    return { kind: 'scalar', span, value, source, plain: true };
  const scalar = { kind: 'scalar', span, value: value.value, source, plain: true } as const;
  if (value.leadingZero) return { ...scalar, leadingZero: true };
  reportAmbiguous(source, span, value.why, report);
  return { ...scalar, refused: true };
}

export function reportAmbiguous(source: string, span: Span, why: string, report: Report): void {
  const help = 'write it as a plain decimal, such as 3.2478; put it in quotes if it is a name';
  report('scalar', span, `${quoted(source)} can be read in more than one way: ${why}`, help);
}

/** Raw controls are found in the bytes; here, those that an escape such as `"\\e"` brings in. Whether there were any. */
export function refuseEscapedControls(value: string, span: Span, text: string, report: Report): boolean {
  const found = refusedControl(value);
  if (found === undefined) return false;
  // One that stands in the file as it is has been told at its own place.
  if (!text.slice(span.start, span.end).includes(found)) {
    const message = `this text holds the control character ${escapeHidden(found)}`;
    report('control-character', span, message, 'leave it out');
  }
  return true;
}

function withoutLineEnd(span: Span, text: string): Span {
  return { start: span.start, end: span.start + text.slice(span.start, span.end).trimEnd().length };
}
