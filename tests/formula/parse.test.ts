import { expect, it } from 'vitest';
import { parseFormula } from '../../src/formula/parse.ts';
import { isFormulaProblem } from '../../src/formula/problem.ts';
import { parsed, problemWith } from './parsed.ts';

it('a formula keeps the digits as written and knows where everything stands', () => {
  expect(parsed(' 0.0020 * (bore)').root).toEqual({
    kind: 'operation',
    operator: '*',
    left: { kind: 'number', text: '0.0020', value: { n: 20n, d: 10000n }, start: 1, end: 7 },
    right: { kind: 'name', name: 'bore', start: 10, end: 16 },
    start: 1,
    end: 16,
  });
});

it('of a name stands what was written and nothing beside it', () => {
  expect(parsed('bore').root).toStrictEqual({ kind: 'name', name: 'bore', start: 0, end: 4 });
  expect(parsed('bore[ 1   L ]').root).toStrictEqual({
    kind: 'name',
    name: 'bore',
    at: '1 L',
    start: 0,
    end: 13,
  });
});

/** The text, the message, what stands underlined, and the help. */
const REFUSED: readonly (readonly [string, string, string, string?])[] = [
  ['', 'the formula is empty', '', 'write one such as 0.0005 * bore'],
  ['   ', 'the formula is empty', '   '],
  ['2 × 3', '× (U+00D7) has no place in a formula', '×', 'write * to multiply'],
  ['2 · 3', '· (U+00B7) has no place in a formula', '·', 'write * to multiply'],
  ['2 ÷ 3', '÷ (U+00F7) has no place in a formula', '÷', 'write / to divide'],
  ['2 : 3', ': has no place in a formula', ':', 'write / to divide'],
  ['2 − 3', '− (U+2212) has no place in a formula', '−', 'write a plain - to take away'],
  ['2 – 3', '– (U+2013) has no place in a formula', '–', 'write a plain - to take away'],
  ['bore^2', '^ has no place in a formula', '^', 'write a power out: bore * bore'],
  ['5 %', '% has no place in a formula', '%', 'write 5 % as 0.05'],
  ['max(1; 2)', '; has no place in a formula', ';', 'put a comma between the values of max and min'],
  ['{2}', '{ has no place in a formula', '{', 'use round brackets'],
  ['2 *', 'a value is missing at the end of the formula', ''],
  ['* bore', 'a value is missing before *', '*'],
  ['+ bore', 'a value is missing before +', '+'],
  ['bore + )', 'a value is missing before )', ')'],
  ['()', 'a value is missing before )', ')'],
  ['max(1, , 2)', 'a value is missing before ,', ','],
  ['(bore + 1', 'this ( is not closed', '(', 'add )'],
  ['abs(bore', 'this ( is not closed', '(', 'add )'],
  ['bore)', 'this ) closes no bracket', ')', 'take it out'],
  ['bore, 2', 'a comma belongs between the values of max, mean, min, round, spread or sum', ','],
  ['(bore, 2)', 'a comma belongs between the values of max, mean, min, round, spread or sum', ','],
  [
    '2 bore',
    'no sign is allowed before bore',
    'bore',
    "write * to multiply; numbers are in the document's unit already",
  ],
  ['1 2', 'no sign is allowed before 2', '2'],
  ['2(3)', 'no sign is allowed before (', '('],
  ['(2)(3)', 'no sign is allowed before (', '('],
  ['max(1 2)', 'no sign is allowed before 2', '2'],
  [
    'bore(2)',
    'bore is not a function',
    'bore',
    'the functions are abs, max, mean, min, round, spread, sqrt, sum; to multiply write *',
  ],
  ['sqr(bore)', 'sqr is not a function', 'sqr', 'did you mean sqrt?; to multiply write *'],
  ['maxx(1, 2)', 'maxx is not a function', 'maxx', 'did you mean max?; to multiply write *'],
  ['min * 2', 'min is a function and needs its values in brackets', 'min', 'write min(a, b, …)'],
  ['abs()', 'abs does not take no values', 'abs()', 'write abs(x)'],
  ['abs(1, 2)', 'abs does not take 2 values', 'abs(1, 2)', 'write abs(x)'],
  ['sqrt(1, 2)', 'sqrt does not take 2 values', 'sqrt(1, 2)', 'write sqrt(x)'],
  ['1 + max()', 'max does not take no values', 'max()', 'write max(a, b, …)'],
  ['min()', 'min does not take no values', 'min()'],
  ['round(1, 2, 3)', 'round does not take 3 values', 'round(1, 2, 3)', 'write round(x) or round(x, places)'],
  [
    'round(bore, 2.5)',
    'round keeps a whole number of decimals, 0 to 15, written as a number',
    '2.5',
    'write one such as round(bore / 2, 4)',
  ],
  ['round(bore, -1)', 'round keeps a whole number of decimals, 0 to 15, written as a number', '-1'],
  ['round(bore, 16)', 'round keeps a whole number of decimals, 0 to 15, written as a number', '16'],
  ['round(bore, 999)', 'round keeps a whole number of decimals, 0 to 15, written as a number', '999'],
  ['round(bore, stroke)', 'round keeps a whole number of decimals, 0 to 15, written as a number', 'stroke'],
  ['max(bore)', 'max of one value is that value', 'max(bore)', 'write max(bore[*]) for all its positions'],
  [
    'max(bore) - min(bore)',
    'max of one value is that value',
    'max(bore)',
    'write max(bore[*]) for all its positions',
  ],
  ['mean(2 * bore)', 'mean of one value is that value', 'mean(2 * bore)', 'write mean(a, b, …)'],
  [
    '2 * bore[*]',
    'bore[*] is several values, and one is wanted here',
    'bore[*]',
    'write max(bore[*]), min, mean, sum or spread of it',
  ],
  ['abs(bore[neighbours])', 'bore[neighbours] is several values, and one is wanted here', 'bore[neighbours]'],
  ['max(2 * bore[*], 1)', 'bore[*] is several values, and one is wanted here', 'bore[*]'],
  ['round(bore[*], 2)', 'bore[*] is several values, and one is wanted here', 'bore[*]'],
  [
    'bore[]',
    'these square brackets hold no position',
    '[]',
    'write bore[*] for every position, bore[1] for position 1, or [next], [previous] or [neighbours]',
  ],
  ['bore[1+1]', 'these square brackets hold no position', '[1+1]'],
  ['bore[1, 2]', 'these square brackets hold no position', '[1, 2]'],
  ['Bore[1]', 'Bore is not a name: names are small letters, digits and _', 'Bore', 'write bore'],
  [
    'bore [1]',
    '[ has no place in a formula',
    '[',
    'write square brackets behind a name, with the position in them: liner_protrusion[1]',
  ],
  ['bore[1', '[ has no place in a formula', '['],
  ['[1]', '[ has no place in a formula', '['],
  ['bore[1][2]', '[ has no place in a formula', '['],
  [
    'bore]',
    '] has no place in a formula',
    ']',
    'write square brackets behind a name, with the position in them: liner_protrusion[1]',
  ],
  ['2[1]', '[ has no place in a formula', '['],
  ['max[1](2, 3)', 'max is a function and needs its values in brackets', 'max[1]', 'write max(a, b, …)'],
  ['bore[1](2)', 'no sign is allowed before (', '('],
  ['Bore * 2', 'Bore is not a name: names are small letters, digits and _', 'Bore', 'write bore'],
  ['_x', '_x is not a name: names are small letters, digits and _', '_x', 'a name begins with a letter'],
  [
    '2bore',
    '2bore is not a number as a formula writes it',
    '2bore',
    "write 2 * bore to multiply; a number takes the document's unit",
  ],
  ['1e3', '1e3 is not a number as a formula writes it', '1e3', 'write the number out, without an exponent'],
  [
    '5e-4 * bore',
    '5e is not a number as a formula writes it',
    '5e',
    'write the number out, without an exponent',
  ],
  ['0x1F', '0x1F is not a number as a formula writes it', '0x1F', 'write numbers as 12, 0.005 or .5'],
  ['007', '007 is not a number as a formula writes it', '007', 'write numbers as 12, 0.005 or .5'],
  ['5. * bore', '5. is not a number as a formula writes it', '5.'],
  ['1.2.3', '1.2.3 is not a number as a formula writes it', '1.2.3'],
  ['.', '. is not a number as a formula writes it', '.'],
  [
    '0,0005 * bore',
    '0,0005 may be one number or two',
    '0,0005',
    'write 0.0005, or 0, 0005 with a space for two values',
  ],
  ['max(bore, 0,5)', '0,5 may be one number or two', '0,5', 'write 0.5, or 0, 5 with a space for two values'],
  ['bore ^ 2', '^ has no place in a formula', '^', 'write a power out: bore * bore'],
  ['5 % * bore', '% has no place in a formula', '%', 'write 5 % as 0.05'],
  ['2 × bore', '× (U+00D7) has no place in a formula', '×', 'write * to multiply'],
  ['bore − 1', '− (U+2212) has no place in a formula', '−', 'write a plain - to take away'],
  [
    'bоre',
    'о (U+043E) has no place in a formula',
    'о',
    'a formula holds numbers, names, + - * / ( ) and abs, max, mean, min, round, spread, sqrt, sum',
  ],
  ['-', 'a value is missing at the end of the formula', ''],
  ['bore\u202e', 'the character U+202E has no place in a formula', '\u202e'],
  [
    'bore\n',
    'the character U+000A has no place in a formula',
    '\n',
    'write it on one line, with plain spaces',
  ],
  [
    'bore\r',
    'the character U+000D has no place in a formula',
    '\r',
    'write it on one line, with plain spaces',
  ],
  [
    '\tbore',
    'the character U+0009 has no place in a formula',
    '\t',
    'write it on one line, with plain spaces',
  ],
  ['1 + 😀', '😀 (U+1F600) has no place in a formula', '😀'],
  ['1 + \ud800', 'the character U+D800 has no place in a formula', '\ud800'],
];

const refused = REFUSED.map(([text, message, underlined, help]) => ({ text, message, underlined, help }));

it.each(refused)('$text is refused: $message', ({ text, message, underlined, help }) => {
  const found = problemWith(text);
  expect(found?.message).toBe(message);
  expect(text.slice(found?.start, found?.end)).toBe(underlined);
  if (help !== undefined) expect(found?.help).toBe(help);
});

it('what nothing helps against says nothing of help', () => {
  expect(problemWith('* 2')).toStrictEqual({ message: 'a value is missing before *', start: 0, end: 1 });
});

it('the place is that of the slip, not of a like sign before it', () => {
  expect(problemWith('(2)(3)')).toMatchObject({ start: 3, end: 4 });
  expect(problemWith('max(1, , 2)')).toMatchObject({ start: 7, end: 8 });
});

/** The largest that is read and the smallest that is not. */
const BOUNDS: readonly (readonly [string, string, string, RegExp])[] = [
  ['length', 'bore'.padEnd(200), 'bore'.padEnd(201), /201 characters long; 200 is the most/],
  ['number of parts', `-${sum(50)}`, sum(51), /more than 100 parts/],
  ['brackets', nested('(', 20, ')'), nested('(', 21, ')'), /more than 20 deep/],
  ['minus signs', nested('-', 20, ''), nested('-', 21, ''), /more than 20 deep/],
  ['functions', nested('abs(', 20, ')'), nested('abs(', 21, ')'), /more than 20 deep/],
];

it.each(BOUNDS)('the %s of a formula is bounded', (_, largest, beyond, message) => {
  expect(problemWith(largest)).toBeUndefined();
  expect(problemWith(beyond)?.message).toMatch(message);
});

const SHORTEN = 'shorten it, or state the limit as a number';

it.each([
  [' '.repeat(201), 'the formula is 201 characters long; 200 is the most', SHORTEN, 0, 201],
  [sum(51), 'the formula has more than 100 parts', SHORTEN, 0, 101],
  [nested('-', 21, ''), 'brackets and signs stand more than 20 deep here', 'take the spare ones out', 21, 22],
])('%s is refused whole', (text, message, help, start, end) => {
  expect(problemWith(text)).toEqual({ message, help, start, end });
});

it.each([
  ['max(1,.5)', undefined],
  ['max(1, 2)', undefined],
  ['max(0.5,1)', undefined],
  ['round(bore,4)', undefined],
])('%s leaves no doubt about its comma', (text, problem) => {
  expect(problemWith(text)).toBe(problem);
});

it('a formula that reads is not taken for a problem', () => {
  expect(isFormulaProblem(parseFormula('message * 2'))).toBe(false);
});

function sum(terms: number): string {
  return Array(terms).fill('a').join('+');
}

function nested(open: string, levels: number, close: string): string {
  return `${open.repeat(levels)}1${close.repeat(levels)}`;
}
