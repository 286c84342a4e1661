import type { ErrorCode, YAMLError } from 'yaml';
import type { DocumentCode } from '../../diagnostic/diagnostic.ts';
import { quoted } from '../../diagnostic/quoted.ts';
import type { Problem } from './problem.ts';

interface Words {
  readonly code: DocumentCode;
  readonly message: (here: string) => string;
  readonly help?: string;
}

/** What is found without the parser, with a better place or before it is asked. */
type Found = 'NON_STRING_KEY' | 'BAD_DIRECTIVE' | 'RESOURCE_EXHAUSTION';
type Code = Exclude<ErrorCode, Found>;

/** What the parser complains of. */
export type Complaint = Pick<YAMLError, 'pos'> & { readonly code: Code };

export const isComplaint = (error: YAMLError): error is YAMLError & Complaint =>
  Object.hasOwn(WORDS, error.code);

/** The parser's complaint in our words. Its own words are never shown: they quote the file raw. */
export function translate(
  error: Complaint,
  text: string,
  bracketEndingAt: (end: number) => number | undefined,
): Problem {
  // Trouble found at the end of the file is shown behind its last word, not on an empty line below.
  const last = text.trimEnd().length;
  const start = Math.max(0, Math.min(error.pos[0], last));
  const end = Math.max(start, Math.min(error.code === 'BAD_DQ_ESCAPE' ? start + 2 : error.pos[1], last));
  if (start === last && UNFINISHED.has(error.code)) return { ...unfinished, span: { start, end } };
  const bracket = error.code === 'BAD_INDENT' ? bracketEndingAt(error.pos[0]) : undefined;
  if (bracket !== undefined) return openBracket(bracket, text);
  const { code, message, help } = WORDS[error.code];
  if (error.code === 'BAD_INDENT' || error.code === 'BLOCK_AS_IMPLICIT_KEY') {
    const at = behindComments(start, text);
    const empty = emptyAbove(at, text);
    if (empty !== undefined) return filledBelow(empty, at);
    if (at > start) return { code, span: { start: at, end: at + 1 }, message: message(''), help };
  }
  return { code, span: { start, end }, message: message(text.slice(start, end)), help };
}

/** A comment may stand in any column: it is the line below it that does not fit. */
function behindComments(from: number, text: string): number {
  const lineStart = text.lastIndexOf('\n', from - 1) + 1;
  const passed = /^(?:[ \t]*(?:#.*)?\r?\n)+[ \t]*/.exec(text.slice(lineStart))?.[0];
  return passed === undefined ? from : lineStart + passed.length;
}

/** The {} or [] of a scaffold that was left where lines were filled in below it. */
const emptyAbove = (at: number, text: string): string | undefined =>
  /(\{\}|\[\])[ \t]*(?:#.*)?(?:\r?\n[ \t]*(?:#.*)?)*$/.exec(text.slice(0, at))?.[1];

const filledBelow = (empty: string, start: number): Problem => ({
  code: 'yaml',
  span: { start, end: start + 1 },
  message: `lines follow ${quoted(empty)}, which says that there are none`,
  help: `take the ${empty} away`,
});

/** What the parser says, at the end of the file, about brackets and quotes that are still open. */
const UNFINISHED: ReadonlySet<ErrorCode> = new Set(['BAD_INDENT', 'MISSING_CHAR', 'UNEXPECTED_TOKEN']);

const unfinished = {
  code: 'yaml',
  message: 'the file ends here, and a bracket or a quote is still open',
  help: 'close it where the list, the map or the text ends',
} as const;

/** The parser finds it only at the line below, where the indentation cannot belong to the bracket any more. */
const openBracket = (start: number, text: string): Problem => ({
  code: 'yaml',
  span: { start, end: start + 1 },
  message: `this ${quoted(text.charAt(start))} is not closed before the next line begins anew`,
  help: `write the ${text.charAt(start) === '[' ? ']' : '}'} where the list or the mapping ends`,
});

const words = (code: DocumentCode, message: string | Words['message'], help?: string): Words => {
  const known = { code, message: typeof message === 'string' ? () => message : message };
  return help === undefined ? known : { ...known, help };
};

const NO_ALIAS = 'write the value out wherever it is meant';
const NO_TAG = 'leave the tag out';
const ONE_LINE_KEY = 'write the key, a colon and a space on one line: `measure: main_journal_diameter`';

/** By the parser's stable codes; a code it adds one day does not compile until it has words here. */
const WORDS: Readonly<Record<Code, Words>> = {
  ALIAS_PROPS: words('alias', 'an alias carries an anchor or a tag', NO_ALIAS),
  BAD_ALIAS: words(
    'alias',
    'anchors (&) and aliases (*) are not used here',
    `${NO_ALIAS}; put text that begins so in quotes`,
  ),
  MULTIPLE_ANCHORS: words('alias', 'a value has two anchors', NO_ALIAS),
  MULTIPLE_TAGS: words('tag', 'a value has two tags', NO_TAG),
  TAG_RESOLVE_FAILED: words('tag', (here) => `tags such as ${quoted(here)} are not used here`, NO_TAG),
  BAD_COLLECTION_TYPE: words('tag', 'a tag does not fit the list or map after it', NO_TAG),
  DUPLICATE_KEY: words('duplicate-key', 'a key is written twice', 'keep one of the two'),
  BAD_DQ_ESCAPE: words(
    'yaml',
    (here) => `${quoted(here)} is not an escape that YAML knows`,
    'write \\\\ for a backslash, or use single quotes',
  ),
  BAD_INDENT: words(
    'yaml',
    'the indentation does not fit the lines above',
    'start the keys of one map, and the items of one list, in the same column; close every bracket and quote',
  ),
  BAD_PROP_ORDER: words('alias', 'an anchor or a tag is in the wrong place', 'leave it out'),
  BAD_SCALAR_START: words('yaml', (here) => `a value cannot begin with ${quoted(here)}`, 'put it in quotes'),
  BLOCK_AS_IMPLICIT_KEY: words(
    'yaml',
    'a second key or a list begins on the line of a key',
    'begin a new line, indented; or put text that holds a colon and a space in quotes',
  ),
  BLOCK_IN_FLOW: words(
    'yaml',
    'an indented list or map is inside brackets',
    'write it in brackets too: [ ] or { }',
  ),
  IMPOSSIBLE: words('yaml', 'this cannot be read', 'compare it with the lines around it'),
  KEY_OVER_1024_CHARS: words('yaml', 'a key is longer than 1024 characters', 'shorten it'),
  MISSING_CHAR: words(
    'yaml',
    missing,
    'look for a colon and a space after a key, a comma between items, a space before #, a closing quote or bracket',
  ),
  MULTILINE_IMPLICIT_KEY: words('yaml', runsOn, ONE_LINE_KEY),
  MULTIPLE_DOCS: words(
    'yaml',
    'a second document begins here (after --- or ...)',
    'put each document in a file of its own',
  ),
  TAB_AS_INDENT: words('yaml', 'a tab is used to indent', 'indent with spaces'),
  UNEXPECTED_TOKEN: words(
    'yaml',
    (here) => (here === '' ? 'something is missing here' : `${quoted(here)} does not belong here`),
    'compare it with the lines around it; put text with special characters in quotes',
  ),
};

/** The parser marks a whole key that has no colon, but a single place where anything else is missing. */
function missing(here: string): string {
  if (/^[^\s,\]}]{2}/.test(here)) return `${quoted(here)} is where a key and its colon are expected`;
  return 'a character is missing here';
}

/** Mostly a forgotten colon, or the space behind it: the line runs on into the next, which has one. */
function runsOn(here: string): string {
  const line = here.split('\n', 1)[0]?.trim() ?? '';
  if (/^["'[{]/.test(line) || line === '') return 'a key goes over several lines';
  return `${quoted(line)} has no colon and space, so it runs on into the next line`;
}
