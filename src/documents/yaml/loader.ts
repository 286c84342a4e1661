import { type Document, parseDocument } from 'yaml';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import { checkNumbers } from '../session/readings.ts';
import { controlCharacters, decode } from './bytes.ts';
import { checkDirectives } from './directives.ts';
import { flowStarts } from './flowStarts.ts';
import { tooManyMarks } from './marks.ts';
import { mergeMarkers } from './mergeMarkers.ts';
import type { Node, SourceText } from './node.ts';
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
 * The parser only finds the structure. In the failsafe schema every scalar stays text, so no line of the file can
 * ask for other rules, and what text means is decided here. Its own check for unique keys takes quadratic time.
 */
export const PARSE_OPTIONS = {
  version: '1.2',
  schema: 'failsafe',
  merge: false,
  resolveKnownTags: false,
  strict: true,
  stringKeys: true,
  uniqueKeys: false,
  prettyErrors: false,
  logLevel: 'error',
} as const;

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
  if (parsed === undefined) return { source, diagnostics: toDiagnostics([...problems, unparsable], source) };
  const { root, data, leadingZeros, complete } = walk(parsed.contents, source, report);
  if (complete) checkNumbers(root, leadingZeros, source.text, report);
  const syntax = syntaxProblems(parsed, source, complete);
  const diagnostics = toDiagnostics([...withoutEchoes(problems, syntax, source), ...syntax], source);
  const whole = complete && !syntax.some(({ code }) => code === 'yaml' || code === 'depth');
  return whole ? { source, root, data, diagnostics } : { source, diagnostics };
}

/** A badly broken file makes errors by the thousand; without stack traces they cost a third of the time. */
function parse(text: string): Document.Parsed | undefined {
  const limit = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return parseDocument(text, PARSE_OPTIONS);
  } catch {
    return undefined;
  } finally {
    Error.stackTraceLimit = limit;
  }
}

/** The parser is not known to throw; if it does, the file is still to blame and the others are still read. */
const unparsable: Problem = {
  code: 'yaml',
  span: { start: 0, end: 0 },
  message: 'the file cannot be read as YAML',
  help: 'compare it with a document that can be read',
};

/** The first of each line: what follows on it is mostly the same slip again. Too deep a nesting the walk has told. */
function syntaxProblems(parsed: Document.Parsed, source: SourceText, complete: boolean): Problem[] {
  const errors = [...parsed.errors, ...parsed.warnings]
    .filter(isComplaint)
    .filter(({ code }) => complete || code !== 'RESOURCE_EXHAUSTION');
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
