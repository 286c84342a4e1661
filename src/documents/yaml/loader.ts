import type { Document } from 'yaml';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import { checkNumbers } from '../session/readings.ts';
import { controlCharacters, decode } from './bytes.ts';
import { checkDirectives } from './directives.ts';
import { flowStarts } from './flowStarts.ts';
import { tooManyMarks } from './marks.ts';
import { mergeMarkers } from './mergeMarkers.ts';
import type { Node, SourceText } from './node.ts';
import { parse } from './parse.ts';
import { type Problem, type Report, toDiagnostics } from './problem.ts';
import { isComplaint, translate } from './syntax.ts';
import { walk } from './walk.ts';

/** A file as far as it could be read. With any diagnostic nothing in it is to be trusted for judging. */
export interface Loaded {
  readonly source: SourceText;
  /** Absent when the text is not well-formed, or too big or too deep to be read whole. */
  readonly root?: Node;
  /** The same document as plain values, for a schema: maps without a prototype. Absent when root is. */
  readonly data?: unknown;
  /** Every problem found, in the order of the file. */
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads a document of a shop repository. Never throws, whatever the bytes; all problems are reported, not the first.
 * @param path relative to the working directory, with `/`; used for places only
 */
export function loadYaml(path: string, bytes: Uint8Array): Loaded {
  const { source, problem = tooManyMarks(source.text) ?? mergeMarkers(source.text) } = decode(path, bytes);
  return problem === undefined ? loadText(source) : { source, diagnostics: toDiagnostics([problem], source) };
}

function loadText(source: SourceText): Loaded {
  const problems: Problem[] = controlCharacters(source.text);
  const report: Report = (code, span, message, help) => problems.push({ code, span, message, help });
  checkDirectives(source.text, report);
  const parsed = parse(source.text);
  if ('code' in parsed) return { source, diagnostics: toDiagnostics([...problems, parsed], source) };
  const { root, data, leadingZeros, complete } = walk(parsed.contents, source, report);
  checkNumbers(root, leadingZeros, source.text, report);
  const syntax = syntaxProblems(parsed, source);
  const diagnostics = toDiagnostics([...withoutEchoes(problems, syntax, source), ...syntax], source);
  const whole = complete && !syntax.some(({ code }) => code === 'yaml');
  return whole ? { source, root, data, diagnostics } : { source, diagnostics };
}

/** The first of each line: what follows on it is mostly the same slip again. */
function syntaxProblems(parsed: Document.Parsed, source: SourceText): Problem[] {
  const errors = [...parsed.errors, ...parsed.warnings].filter(isComplaint);
  let starts: ReadonlyMap<number, number> | undefined;
  const bracketEndingAt = (end: number): number | undefined => {
    starts ??= flowStarts(parsed.contents);
    const start = starts.get(end);
    // One that has its own end lost it to a bracket within, which is reported itself.
    return start !== undefined && isClosed(source.text, start, end) ? undefined : start;
  };
  const problems = errors
    .map((error) => translate(error, source.text, bracketEndingAt))
    .sort((a, b) => a.span.start - b.span.start);
  const lines = new Set<string>();
  return problems.filter((problem) => {
    const known = lines.has(lineAndCode(problem, source));
    lines.add(lineAndCode(problem, source));
    return !known;
  });
}

const isClosed = (text: string, start: number, end: number): boolean =>
  text.charAt(end - 1) === (text.charAt(start) === '[' ? ']' : '}');

/** A line that is not well-formed often looks like an odd key as well. */
function withoutEchoes(
  problems: readonly Problem[],
  syntax: readonly Problem[],
  source: SourceText,
): Problem[] {
  const broken = new Set(syntax.map((problem) => lineAndCode(problem, source)));
  return problems.filter(
    (each) => each.code !== 'key' || !broken.has(lineAndCode({ ...each, code: 'yaml' }, source)),
  );
}

const lineAndCode = ({ span, code }: Problem, source: SourceText): string =>
  `${source.place(span).line} ${code}`;
