import { type Diagnostic, type DocumentCode, diagnostic } from '../../diagnostic/diagnostic.ts';
import type { SourceText, Span } from './node.ts';

/** A problem before its offsets are turned into lines and columns. */
export interface Problem {
  readonly code: DocumentCode;
  readonly span: Span;
  readonly message: string;
  readonly help?: string | undefined;
}

/** Notes a problem and carries on, so that one run shows everything. */
export type Report = (code: DocumentCode, span: Span, message: string, help?: string) => void;

/** A damaged file can hold a hundred thousand problems; nobody reads past these. */
const MOST_SHOWN = 100;

/** In the order of the file, each problem once, the rest of a very long list counted in one last diagnostic. */
export function toDiagnostics(problems: readonly Problem[], source: SourceText): Diagnostic[] {
  const sorted = [...problems].sort((a, b) => a.span.start - b.span.start);
  const distinct = sorted.filter(firstOfItsKind());
  const shown = distinct
    .slice(0, MOST_SHOWN)
    .map((each) => diagnostic(each.code, source.place(each.span), each.message, each.help));
  const next = distinct[MOST_SHOWN];
  if (next === undefined) return shown;
  const message = `${distinct.length - MOST_SHOWN} more problems from here on are not listed`;
  return [
    ...shown,
    diagnostic(next.code, source.place(next.span), message, 'correct the problems above first'),
  ];
}

function firstOfItsKind(): (problem: Problem) => boolean {
  const seen = new Set<string>();
  return ({ code, span }) => {
    const key = `${code} ${span.start}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  };
}
