import fc from 'fast-check';
import { expect, it } from 'vitest';
import { evaluateFormula } from '../../src/formula/evaluate.ts';
import { formatFormula } from '../../src/formula/format.ts';
import { namesIn } from '../../src/formula/names.ts';
import { parseFormula } from '../../src/formula/parse.ts';
import { type FormulaProblem, isFormulaProblem } from '../../src/formula/problem.ts';
import { type Fraction, fraction } from '../../src/quantity/fraction.ts';
import { effort } from '../effort.ts';
import { runs } from '../propertyRuns.ts';
import { valuesOf } from './parsed.ts';

const READINGS = valuesOf({ bore: '4.1250', journal_diameter: '3.2480', a: '1.5' });

function fromText(text: string, values: ReadonlyMap<string, Fraction> = READINGS): Fraction | FormulaProblem {
  const formula = parseFormula(text);
  return isFormulaProblem(formula) ? formula : evaluateFormula(formula, values);
}

/** What a stranger may write into a document that somebody else checks. None of it has an answer. */
const HOSTILE: readonly string[] = [
  ...[
    'cos.constructor',
    'sqrt.constructor',
    'bore.constructor',
    'bore["constructor"]',
    '{}.__proto__',
    '[].map',
  ],
  ...[
    'constructor',
    'constructor()',
    'constructor(1)',
    '2 constructor 3',
    'bore constructor(1)',
    'constructor("return 1")()',
    'abs.call(1)',
    'abs.apply',
  ],
  ...[
    '__proto__',
    '__proto__(1)',
    'prototype',
    'prototype(1)',
    'toString',
    'toString()',
    'tostring(1)',
    'valueOf',
  ],
  ...[
    'valueof(1)',
    'hasOwnProperty',
    'hasownproperty(1)',
    'isPrototypeOf(1)',
    '__defineGetter__(1)',
    'self',
    'this',
  ],
  ...[
    'process',
    'process.exit()',
    'process.env',
    'globalThis',
    'require("fs")',
    'import("fs")',
    'global',
    'module',
  ],
  ...[
    'eval(1)',
    'evaluate("1")',
    'parse("1")',
    'compile("1")',
    'parser()',
    'simplify("1")',
    'derivative("x", "x")',
  ],
  ...[
    'rationalize(1)',
    'resolve(1)',
    'help(1)',
    'config(1)',
    'typed(1)',
    'createUnit("x")',
    'import(1)',
    'chain(1)',
  ],
  ...['f.name = "q"', 'f(x) = x', 'f(x)=f(x+1);f(1)', 'f(x)=x<=0?1:f(x-1)+f(x-1);f(40)', 'a=[];a[1e9]=1'],
  ...[
    'journal_diameter = 0',
    'bore := 1',
    'bore += 1',
    'bore++',
    '--bore--',
    'bore; 1',
    'bore\n1',
    'bore, 1',
  ],
  ...[
    '1:1e9',
    '1:1e7',
    'zeros(1e4,1e4)',
    'identity(1e5)',
    'random([1e5,1e5])',
    'bellNumbers(1e4)',
    'ones(9)',
  ],
  ...[
    'format(pi,{notation:"fixed",precision:1e9})',
    'kron(1,1)',
    'resize([],[1e9])',
    'subset(1,index(1:1e8))',
  ],
  ...['combinations(1e15,5e14)', 'bigint(2)^bigint(1e8)', 'isPrime(bignumber(7))', 'eigs(random([300,300]))'],
  ...[
    'factorial(170)',
    '170!',
    '9^9^9',
    '9**9**9',
    'pow(9, 9)',
    'exp(1000)',
    'log(0)',
    'gamma(1)',
    'cbrt(8)',
  ],
  ...[
    '0.001*e',
    '0.001*pi',
    '0.001*tau',
    '0.001*phi',
    '0.001*i',
    '0.001*m',
    '0.001*mm',
    'e',
    'i',
    'pi',
    'infinity',
  ],
  ...[
    'Infinity',
    '-Infinity',
    'NaN',
    'nan',
    'null',
    'undefined',
    'true',
    'false',
    'LN2',
    'version',
    'unit("1 m")',
  ],
  ...[
    'sqrt(-1)',
    'sqrt(1 - bore)',
    '1/0',
    '0/0',
    'bore/(a-a)',
    '1/(1-1)',
    '1/round(0.4)',
    '1/min(0, 1)',
    '5 mod 0',
  ],
  ...[
    '5% + 1',
    '5 %',
    '5 mod 2',
    '5 // 2',
    '1==1',
    '1==1.0000000000001',
    '1 < 2',
    'a > 1',
    'a != 1',
    'a <= 1',
  ],
  ...[
    'a ? 1 : 2',
    'a and 1',
    'a or 1',
    'not a',
    'a && 1',
    'a || 1',
    '!a',
    '~a',
    'a & 1',
    'a | 1',
    'a << 3',
    'a to mm',
  ],
  ...[
    '1/2 d',
    '2(3)',
    '(2)(3)',
    '1 2',
    '2 bore',
    '2bore',
    'bore 2',
    'bore(2)',
    '(2)bore',
    '2 mm',
    '1 in',
    '3 thou',
  ],
  ...[
    '1e3',
    '1E3',
    '1e-3',
    '1e400',
    '1e999999999',
    '0x1F',
    '0b1',
    '0o7',
    '007',
    '1_000',
    '1n',
    '5.',
    '.',
    '..',
    '1..2',
  ],
  ...[
    '1,5',
    '0,0005 * bore',
    '1 000',
    "1'000",
    '"1"',
    "'1'",
    '`1`',
    '$\x7b1}',
    '#{1}',
    '<b>1</b>',
    '$(id)',
    '; rm -rf',
  ],
  ...[
    '',
    ' ',
    '(',
    ')',
    '()',
    ')(',
    '((',
    '1 +',
    '+ 1',
    '* 1',
    '1 * / 2',
    ',',
    'max',
    'max(',
    'max(,)',
    'max(1,)',
  ],
  ...[
    'abs()',
    'abs(1, 2)',
    'sqrt()',
    'sqrt(1, 2)',
    'min()',
    'max()',
    'round()',
    'round(1, 2, 3)',
    'round(1, 1e9)',
  ],
  ...[
    'round(1, 999999999)',
    'round(1, -1)',
    'round(1, 0.5)',
    'round(1, bore)',
    'total(1, 2)',
    'median(1, 2)',
    'ABS(1)',
  ],
  ...[
    'bore[]',
    'bore[[1]]',
    'bore[constructor]',
    'bore[__proto__]',
    'bore["1"]',
    'bore[1;2]',
    'bore[*][*]',
    'bore[*',
    'bore[-1]',
    'bore[1].a',
    'max(bore[*]',
    'max(bore[**])',
    'spread(bore)',
    'mean(bore)',
    'bore[\u0000]',
    'bore[\u202e1]',
    `bore[${'1'.repeat(190)}]`,
    `bore${'[1'.repeat(90)}`,
  ],
  ...[
    'bоre',
    'bore\u200b',
    '\u202ebore',
    'ｂore',
    '１',
    '٣',
    '2×3',
    '6÷2',
    '3−2',
    '3–2',
    '½',
    '²',
    '∞',
    '√4',
    'π',
  ],
  ...[
    '\u0000',
    'bore\u0000',
    '\u001b[31mbore',
    'bore\r',
    '\tbore',
    'bore\u0085',
    'bore\u2028',
    '\ufeffbore',
    '\ud800',
  ],
  ...[
    '1\u00a0+ 1',
    '😀',
    'bore # 1',
    'bore // 1',
    'bore /* 1 */',
    '\\x31',
    '\\u0031',
    '@bore',
    'bore@HEAD',
    '../bore',
  ],
  ...['('.repeat(20_000), '-'.repeat(20_000), '9'.repeat(1_000_000), 'abs('.repeat(5000), '1+'.repeat(5000)],
  ...[`${'('.repeat(50)}1${')'.repeat(50)}`, `${'-'.repeat(60)}1`, `${'abs('.repeat(30)}1${')'.repeat(30)}`],
  ...[`${'1+'.repeat(99)}1`, `max(${'1, '.repeat(60)}1`, ' '.repeat(300), `bore${' '.repeat(300)}`],
];

it.each(HOSTILE.map((text) => [text.slice(0, 40), text] as const))(
  '%j is refused with a place',
  (_, text) => {
    const found = fromText(text);
    expect(found).toHaveProperty('message');
    if (!isFormulaProblem(found)) return;
    expect(found.start).toBeGreaterThanOrEqual(0);
    expect(found.end).toBeGreaterThanOrEqual(found.start);
    expect(found.end).toBeLessThanOrEqual(text.length);
  },
);

it('no message carries a character that a terminal would act on', () => {
  for (const text of HOSTILE)
    expect(Object.values(fromText(text)).join(' ')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
});

it('the list is long, and nothing stands in it twice', () => {
  expect(new Set(HOSTILE).size).toBe(HOSTILE.length);
  expect(HOSTILE.length).toBeGreaterThan(250);
});

/** Odd to look at, but only numbers. */
it.each([
  ['0 * 9', 0n, 1n],
  ['- - -1', -1n, 1n],
  ['-0', 0n, 1n],
  ['((((((((((1))))))))))', 1n, 1n],
  ['max(1, 1, 1)', 1n, 1n],
])('%s is a harmless number', (text, n, d) => {
  expect(fromText(text)).toEqual({ n, d });
});

const odd = (digits: bigint): Fraction => fraction(10n ** digits + 7n, 10n ** digits + 9n);
const square = (digits: bigint): Fraction => fraction((10n ** digits + 7n) ** 2n, (10n ** digits + 9n) ** 2n);
const repeated = (part: string, times: number, sign: string): string => Array(times).fill(part).join(sign);

/** The dearest that the bounds let through: long products, many roots, roots that are whole and huge. */
const DEAR: readonly (readonly [string, Fraction])[] = [
  [repeated('7'.repeat(99), 2, '*'), fraction(1)],
  [repeated('a', 50, '*'), odd(24n)],
  [repeated('a', 50, '+'), odd(24n)],
  [repeated('a', 50, '/'), odd(24n)],
  [repeated('sqrt(a)', 25, '+'), odd(1200n)],
  [repeated('sqrt(a)', 25, '+'), fraction(3n, 10n ** 1200n)],
  [`max(${repeated('sqrt(a)', 24, ',')})`, square(600n)],
  [`max(${repeated('sqrt(a*a)', 19, ',')})`, odd(600n)],
  [`max(${repeated('a', 60, ',')})`, odd(1200n)],
  [`${'sqrt('.repeat(20)}a${')'.repeat(20)}`, square(600n)],
  [repeated('round(a)', 16, '+'), odd(1200n)],
  ['a', fraction(3n ** 2500n, 5n ** 1700n)],
];

it.each(DEAR)('%s of the longest numbers has an answer in no noticeable time', (text, a) => {
  const values = new Map([['a', a]]);
  expect(fromText(text, values)).not.toHaveProperty('message');
  expect(effort(() => fromText(text, values))).toBeLessThan(50);
});

it('no hostile text takes noticeable time', () => {
  for (const text of HOSTILE) expect(effort(() => fromText(text))).toBeLessThan(50);
});

it('reading any text at all never throws, and a problem lies within it', () => {
  const piece = fc.oneof(
    fc.constantFrom(
      'bore',
      'a',
      'max(',
      'sqrt(',
      'round(',
      'spread(',
      '[',
      '[*]',
      '[1]',
      ']',
      'abs(',
      '(',
      ')',
      ',',
      ', ',
      '+',
      '-',
      '*',
      '/',
      ' ',
    ),
    fc.constantFrom('0', '1', '.5', '0.0005', '1e', '__proto__', 'constructor'),
    fc.string({ unit: 'binary', maxLength: 3 }),
  );
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 220 }),
    fc.string({ unit: 'grapheme', maxLength: 50 }),
    fc.array(piece, { maxLength: 40 }).map((pieces) => pieces.join('')),
  );
  fc.assert(
    fc.property(text, (any) => {
      const found = fromText(any);
      if (isFormulaProblem(found)) {
        expect(0 <= found.start && found.start <= found.end && found.end <= any.length).toBe(true);
      }
    }),
    runs(20_000),
  );
});

it('explaining a formula that reads never throws either', () => {
  const sign = fc.constantFrom('+', '-', '*', '/');
  const text = fc.array(fc.tuple(fc.constantFrom('bore', '2', '-a', '(1)', 'abs(a)'), sign), {
    maxLength: 20,
  });
  fc.assert(
    fc.property(text, (pairs) => {
      const formula = parseFormula(`${pairs.flat().join('')}1`);
      expect(isFormulaProblem(formula)).toBe(false);
      if (isFormulaProblem(formula)) return;
      expect(formatFormula(formula, new Map())).not.toBe('');
      expect(formatFormula(formula, new Map())).not.toMatch(/undefined/);
      expect(namesIn(formula).every((name) => READINGS.has(name))).toBe(true);
    }),
    runs(2000),
  );
});
