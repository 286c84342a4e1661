import { Composer, type CST, type Document, Parser, YAMLParseError } from 'yaml';
import { tooDeepToParse } from './nesting.ts';
import type { Problem } from './problem.ts';

/**
 * The parser only finds the structure. In the failsafe schema every scalar stays text, so no line of the file can
 * ask for other rules, and what text means is decided here. Its own check for unique keys takes quadratic time.
 */
export const PARSE_OPTIONS = {
  version: '1.2',
  schema: 'failsafe',
  resolveKnownTags: false,
  strict: true,
  stringKeys: true,
  uniqueKeys: false,
  prettyErrors: false,
} as const;

/**
 * The document of a text, or why there is none. A badly broken file makes errors by the thousand; without stack traces
 * they cost a third of the time.
 */
export function parse(text: string): Document.Parsed | Problem {
  const limit = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    const tokens = [...new Parser().parse(text)];
    return tooDeepToParse(tokens) ?? composed(tokens, text.length);
  } catch {
    return unparsable;
  } finally {
    Error.stackTraceLimit = limit;
  }
}

/** The first of several documents, with an error where the second begins. */
function composed(tokens: readonly CST.Token[], length: number): Document.Parsed | Problem {
  const [first, second]: Iterable<Document.Parsed | undefined> = new Composer(PARSE_OPTIONS).compose(
    tokens,
    true,
    length,
  );
  if (second !== undefined) {
    const [start, end] = second.range;
    first?.errors.push(new YAMLParseError([start, end], 'MULTIPLE_DOCS', ''));
  }
  return first ?? unparsable;
}

/** The parser is not known to throw; if it does, the file is still to blame and the others are still read. */
const unparsable: Problem = {
  code: 'yaml',
  span: { start: 0, end: 0 },
  message: 'the file cannot be read as YAML',
  help: 'compare it with a document that can be read',
};
