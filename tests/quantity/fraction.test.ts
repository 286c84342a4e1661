import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  absolute,
  add,
  compare,
  divide,
  equals,
  type Fraction,
  fraction,
  greatest,
  least,
  mean,
  multiply,
  negate,
  parseDecimal,
  round,
  subtract,
  sum,
  toDecimal,
  toNumber,
  ZERO,
} from '../../src/quantity/fraction.ts';
import { runs } from '../propertyRuns.ts';

const RUNS = runs(500);

const whole = fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n });
const anyFraction: fc.Arbitrary<Fraction> = fc
  .tuple(whole, fc.bigInt({ min: 1n, max: 10n ** 9n }))
  .map(([n, d]) => fraction(n, d));

describe('decimal text is read exactly', () => {
  it.each([
    ['0.0020', '20/10000'],
    ['+7', '7/1'],
    ['-3.5', '-35/10'],
    ['.0025', '25/10000'],
    ['-.5', '-5/10'],
    ['05', '5/1'],
    ['0', '0/1'],
    ['3.24781234567890123456789', '324781234567890123456789/100000000000000000000000'],
  ])('%s is %s', (text, expected) => {
    const { n, d } = parseDecimal(text);
    expect(`${n}/${d}`).toBe(expected);
  });
});

describe('a fraction', () => {
  it('keeps the denominator positive', () => expect(fraction(1, -2)).toEqual({ n: -1n, d: 2n }));

  it('cannot have a denominator of zero', () => {
    expect(() => fraction(1, 0)).toThrow(new RangeError('a fraction cannot have a denominator of zero'));
    expect(() => divide(fraction(1), ZERO)).toThrow(RangeError);
  });

  it('adds, subtracts, multiplies and divides without loss', () => {
    fc.assert(
      fc.property(anyFraction, anyFraction, (a, b) => {
        expect(equals(subtract(add(a, b), b), a)).toBe(true);
        expect(equals(add(a, negate(a)), ZERO)).toBe(true);
        if (b.n !== 0n) expect(equals(multiply(divide(a, b), b), a)).toBe(true);
      }),
      RUNS,
    );
  });

  it('keeps a denominator that both have, so that the sum of many readings does not grow', () => {
    expect(add(fraction(3, 100), fraction(5, 100))).toEqual(fraction(8, 100));
    expect(subtract(fraction(3, 100), fraction(5, 100))).toEqual(fraction(-2, 100));
  });

  it.each([
    [fraction(1, 3), fraction(1, 2), -1],
    [fraction(1, 2), fraction(1, 3), 1],
    [fraction(-7, 10), fraction(-5, 10), -1],
    [fraction(2, 7), fraction(1, 7), 1],
    [fraction(1, 4), fraction(2, 8), 0],
    [fraction(3, 8), fraction(3, 8), 0],
  ])('%o beside %o: %i', (a, b, expected) => {
    expect(compare(a, b)).toBe(expected);
    expect(absolute(a)).toEqual({ n: a.n < 0n ? -a.n : a.n, d: a.d });
  });

  it('stays as it is where it is none below zero, and whole in a sum of whole ones', () => {
    for (const value of [ZERO, fraction(1, 8)]) expect(absolute(value)).toBe(value);
    expect(sum([fraction(3), fraction(4)])).toEqual(fraction(7));
  });

  it('is chosen as it stands: of equal ones the first', () => {
    const [quarter, same, half] = [fraction(1, 4), fraction(2, 8), fraction(1, 2)];
    expect(least([half, quarter, same])).toBe(quarter);
    expect(greatest([quarter, same, fraction(-1, 2)])).toBe(quarter);
  });

  it('compares as numbers do, whatever its denominator', () => {
    expect(compare(fraction(1, 3), fraction(2, 6))).toBe(0);
    expect(compare(fraction(-1, 3), fraction(1, 1000))).toBeLessThan(0);
    expect(compare(parseDecimal('0.3'), add(parseDecimal('0.1'), parseDecimal('0.2')))).toBe(0);
    fc.assert(
      fc.property(anyFraction, anyFraction, (a, b) => {
        expect(Math.sign(compare(a, b))).toBe(-Math.sign(compare(b, a)) + 0);
        expect(equals(absolute(subtract(a, b)), absolute(subtract(b, a)))).toBe(true);
      }),
      RUNS,
    );
  });

  it('has a mean of three that is exact: three times the mean is the sum', () => {
    fc.assert(
      fc.property(fc.array(anyFraction, { minLength: 1, maxLength: 6 }), (values) => {
        expect(equals(multiply(mean(values), fraction(values.length)), sum(values))).toBe(true);
        expect(compare(least(values), mean(values))).toBeLessThanOrEqual(0);
        expect(compare(mean(values), greatest(values))).toBeLessThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it('has no least or greatest of nothing', () => {
    expect(() => least([])).toThrow(new RangeError('no values to choose from'));
    expect(() => greatest([])).toThrow(RangeError);
    expect(() => mean([])).toThrow(RangeError);
  });
});

describe('rounding is as on paper: a half goes away from zero', () => {
  it.each([
    [1, 2, '1'],
    [-1, 2, '-1'],
    [3, 2, '2'],
    [-3, 2, '-2'],
    [5, 3, '2'],
    [4, 3, '1'],
    [-4, 3, '-1'],
    [49, 100, '0'],
    [-49, 100, '0'],
    [149, 100, '1'],
    [-149, 100, '-1'],
    [-151, 100, '-2'],
    [6, 3, '2'],
    [-6, 3, '-2'],
    [0, 7, '0'],
  ])('%i/%i is %s', (n, d, expected) => expect(String(round(fraction(n, d)))).toBe(expected));

  it('is never further than a half from the value', () => {
    fc.assert(
      fc.property(anyFraction, (a) => {
        const off = absolute(subtract(a, fraction(round(a))));
        expect(compare(off, fraction(1, 2))).toBeLessThanOrEqual(0);
      }),
      RUNS,
    );
  });
});

describe('a fraction as decimal text', () => {
  it.each([
    ['0.00255', 4, '0.0026'],
    ['-0.00255', 4, '-0.0026'],
    ['-0.00001', 4, '0.0000'],
    ['2.5', 0, '3'],
    ['-0.05', 1, '-0.1'],
    ['12', 3, '12.000'],
    ['-12', 0, '-12'],
    ['0', 2, '0.00'],
    ['-1.005', 2, '-1.01'],
    ['0.05', 2, '0.05'],
  ])('%s to %i decimals is %s', (text, places, expected) =>
    expect(toDecimal(parseDecimal(text), places)).toBe(expected),
  );

  it('is read back as the same number', () => {
    fc.assert(
      fc.property(whole, fc.integer({ min: 0, max: 12 }), (n, places) => {
        const value = fraction(n, 10n ** BigInt(places));
        expect(equals(parseDecimal(toDecimal(value, places)), value)).toBe(true);
      }),
      RUNS,
    );
  });
});

describe('a fraction as the nearest double', () => {
  const HUGE = 2n ** 1100n;

  it.each([
    ['a plain quarter', fraction(1, 4), 0.25],
    ['one third', fraction(1, 3), 1 / 3],
    ['zero', ZERO, 0],
    ['both parts past the range of a double', fraction(HUGE * 3n, HUGE * 4n), 0.75],
    ['only the denominator past it', fraction(10n ** 300n, 10n ** 310n), 1e-10],
    ['a small number over a denominator past it', fraction(-7n, 7n * 2n ** 1030n), -(2 ** -1030)],
    ['only the numerator past it', fraction(10n ** 310n, 10n ** 300n), 1e10],
    ['a negative one with both past it', fraction(-HUGE, 2n * HUGE), -0.5],
    ['a third of a numerator past it', fraction(-7n * HUGE, 3n * 2n ** 900n), (-7 / 3) * 2 ** 200],
    ['a third of a denominator past it', fraction(7n * 2n ** 900n, 3n * HUGE), (7 / 3) * 2 ** -200],
    ['what is smaller than any double', fraction(1n, 2n ** 1200n), 0],
    ['what is greater than any double', fraction(HUGE, 1n), Number.POSITIVE_INFINITY],
  ])('%s', (_, value, expected) => {
    const found = toNumber(value);
    if (Number.isFinite(expected))
      expect(Math.abs(found - expected)).toBeLessThanOrEqual(Math.abs(expected) * 2 ** -52);
    else expect(found).toBe(expected);
  });

  it('does not depend on whether the pair is in lowest terms', () => {
    fc.assert(
      fc.property(anyFraction, (a) => {
        const swollen = fraction(a.n * HUGE, a.d * HUGE);
        const plain = toNumber(a);
        expect(Math.abs(toNumber(swollen) - plain)).toBeLessThanOrEqual(Math.abs(plain) * 2 ** -52);
      }),
      RUNS,
    );
  });
});
