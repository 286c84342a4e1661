import { FUNCTION_NAMES } from './functions.ts';
import { type FormulaProblem, formulaProblem, isFormulaProblem, type Stretch } from './problem.ts';

/** The parser adds the `end` itself, so that whatever is missing there has a place. */
export interface Token extends Stretch {
  readonly kind: 'number' | 'name' | 'sign' | 'end';
  readonly text: string;
  /** Of a name what stands in square brackets behind it. */
  readonly at?: string;
}

interface Word extends Stretch {
  readonly text: string;
}

const TOKEN = /(?<name>[A-Za-z_]\w*)(?:\[(?<at>[^[\]]*)\])?|(?<number>[\d.][\w.]*)|(?<sign>[-+*/(),])/y;
const NUMBER = /^(?:(?:0|[1-9]\d*)(?:\.\d+)?|\.\d+)$/;
const NAME = /^[a-z][a-z0-9_]*$/;
const AT = /^(?:\*|[A-Za-z0-9][A-Za-z0-9_-]*(?: [A-Za-z0-9][A-Za-z0-9_-]*)*)$/;

/** What people write for the four signs, or in other notations, and what to write here. */
const INSTEAD: ReadonlyMap<string, string> = new Map([
  ['×', 'write * to multiply'],
  ['·', 'write * to multiply'],
  ['÷', 'write / to divide'],
  [':', 'write / to divide'],
  ['−', 'write a plain - to take away'],
  ['–', 'write a plain - to take away'],
  ['^', 'write a power out: bore * bore'],
  ['%', 'write 5 % as 0.05'],
  [';', 'put a comma between the values of max and min'],
  ['[', 'write square brackets behind a name, with the position in them: liner_protrusion[1]'],
  [']', 'write square brackets behind a name, with the position in them: liner_protrusion[1]'],
  ['{', 'use round brackets'],
  ['\t', 'write it on one line, with plain spaces'],
  ['\n', 'write it on one line, with plain spaces'],
  ['\r', 'write it on one line, with plain spaces'],
]);

const ALLOWED = `a formula holds numbers, names, + - * / ( ) and ${FUNCTION_NAMES.join(', ')}`;

/** The formula cut into numbers, names and signs; or the first character or word that is none of them. */
export function cutIntoTokens(text: string): readonly Token[] | FormulaProblem {
  const doubtful = decimalComma(text);
  if (doubtful !== undefined) return doubtful;
  const tokens: Token[] = [];
  let start = skipSpaces(text, 0);
  while (start < text.length) {
    const token = tokenAt(text, start);
    if (isFormulaProblem(token)) return token;
    tokens.push(token);
    start = skipSpaces(text, token.end);
  }
  return tokens;
}

function skipSpaces(text: string, from: number): number {
  let at = from;
  while (text[at] === ' ') at += 1;
  return at;
}

function tokenAt(text: string, start: number): Token | FormulaProblem {
  TOKEN.lastIndex = start;
  const match = TOKEN.exec(text);
  if (match?.groups === undefined) return strangeCharacter(text, start);
  const found = { text: match[0], start, end: start + match[0].length };
  if (match.groups.sign !== undefined) return { ...found, kind: 'sign' };
  if (match.groups.name !== undefined) return nameToken(match.groups.name, match.groups.at, found);
  return NUMBER.test(found.text) ? { ...found, kind: 'number' } : badNumber(found);
}

function nameToken(name: string, at: string | undefined, found: Stretch): Token | FormulaProblem {
  const word = { text: name, start: found.start, end: found.start + name.length };
  if (!NAME.test(name)) return badName(word);
  if (at === undefined) return { ...word, kind: 'name' };
  const wanted = at.trim().replace(/ +/g, ' ');
  if (!AT.test(wanted)) return badPosition({ start: word.end, end: found.end }, name);
  return { ...word, kind: 'name', at: wanted, end: found.end };
}

const badPosition = (at: Stretch, name: string): FormulaProblem =>
  formulaProblem(
    at,
    'these square brackets hold no position',
    `write ${name}[*] for every position, ${name}[1] for position 1, or [next], [previous] or [neighbours]`,
  );

/** `max(0,5 * bore)` is a half to one reader and two values to the next, so it is not guessed at. */
function decimalComma(text: string): FormulaProblem | undefined {
  const match = /(?<![\w.])(\d+),(\d+)/.exec(text);
  if (match === null) return undefined;
  const [written, whole, decimals] = match;
  const at = { start: match.index, end: match.index + written.length };
  const help = `write ${whole}.${decimals}, or ${whole}, ${decimals} with a space for two values`;
  return formulaProblem(at, `${written} may be one number or two`, help);
}

function badName(found: Word): FormulaProblem {
  const small = found.text.toLowerCase();
  const help = NAME.test(small) ? `write ${small}` : 'a name begins with a letter';
  return formulaProblem(found, `${found.text} is not a name: names are small letters, digits and _`, help);
}

function badNumber(found: Word): FormulaProblem {
  return formulaProblem(
    found,
    `${found.text} is not a number as a formula writes it`,
    numberHelp(found.text),
  );
}

function numberHelp(text: string): string {
  if (/^[\d.]+[eE]\d*$/.test(text)) return 'write the number out, without an exponent';
  const run = /^([1-9]\d*(?:\.\d+)?|0?\.\d+)([a-z][a-z0-9_]*)$/.exec(text);
  if (run !== null) return `write ${run[1]} * ${run[2]} to multiply; a number takes the document's unit`;
  return 'write numbers as 12, 0.005 or .5';
}

function strangeCharacter(text: string, start: number): FormulaProblem {
  const character = String.fromCodePoint(text.codePointAt(start) ?? 0);
  const at = { start, end: start + character.length };
  return formulaProblem(
    at,
    `${describe(character)} has no place in a formula`,
    INSTEAD.get(character) ?? ALLOWED,
  );
}

/** Look-alikes and what cannot be seen are named by number, so that the message shows what the eye does not. */
function describe(character: string): string {
  const code = `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
  if (/^[!-~]$/.test(character)) return character;
  return /^[\p{L}\p{N}\p{P}\p{S}]$/u.test(character) ? `${character} (${code})` : `the character ${code}`;
}
