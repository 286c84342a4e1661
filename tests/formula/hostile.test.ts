import fc from 'fast-check';
import { expect, it } from 'vitest';
import { evaluateFormula } from '../../src/formula/evaluate.ts';
import { formatFormula } from '../../src/formula/format.ts';
import { namesIn } from '../../src/formula/names.ts';
import { parseFormula } from '../../src/formula/parse.ts';
import { type FormulaProblem, isFormulaProblem } from '../../src/formula/problem.ts';
import { type Fraction, fraction } from '../../src/quantity/fraction.ts';
import { anyCharacter } from '../anyCharacter.ts';
import { effort } from '../effort.ts';
import { runs } from '../propertyRuns.ts';
import { HOSTILE } from './hostileFormulas.ts';
import { valuesOf } from './parsed.ts';

const READINGS = valuesOf({ bore: '4.1250', journal_diameter: '3.2480', a: '1.5' });

function fromText(text: string, values: ReadonlyMap<string, Fraction> = READINGS): Fraction | FormulaProblem {
  const formula = parseFormula(text);
  return isFormulaProblem(formula) ? formula : evaluateFormula(formula, values);
}

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
    fc.string({ unit: anyCharacter, maxLength: 3 }),
  );
  const text = fc.oneof(
    fc.string({ unit: anyCharacter, maxLength: 220 }),
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
