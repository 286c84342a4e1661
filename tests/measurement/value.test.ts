import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addValues,
  combineValues,
  type ErrorTerm,
  exactly,
  lateValue,
  meanValue,
  scaleValue,
  standardUncertainty,
  subtractValues,
  type Value,
  withoutRange,
} from '../../src/measurement/value.ts';
import { add, equals, fraction, mean, parseDecimal } from '../../src/quantity/fraction.ts';
import { runs } from '../propertyRuns.ts';

const KNOWN = Number.POSITIVE_INFINITY;

const read = (amount: string, terms: Readonly<Record<string, number>>): Value => ({
  amount: parseDecimal(amount),
  terms: new Map(
    Object.entries(terms).map(([source, u]): [string, ErrorTerm] => [source, { u, dof: KNOWN }]),
  ),
});

const anyValue: fc.Arbitrary<Value> = fc
  .tuple(
    fc.bigInt({ min: 0n, max: 10n ** 10n }),
    fc.integer({ min: 1, max: 7 }),
    fc.dictionary(
      fc.constantFrom('mic', 'bore', 'master', 'temperature'),
      fc.double({ min: 1, max: 1e5, noNaN: true }),
    ),
  )
  .map(([n, d, terms]) => ({ ...read('0', terms), amount: fraction(n, d) }));

const RUNS = runs(500);

describe('a value less itself', () => {
  it('is exactly zero, with no error left: every source is shared', () => {
    fc.assert(
      fc.property(anyValue, (x) => {
        const nothing = subtractValues(x, x);
        expect(nothing.amount.n).toBe(0n);
        expect(nothing.terms.size).toBe(0);
        expect(standardUncertainty(nothing)).toBe(0);
      }),
      RUNS,
    );
  });
});

describe('an error that two readings share', () => {
  const bore = read('3.2507', { 'largest error of mic': 3, 'resolution at bore': 4 });
  const journal = read('3.2478', { 'largest error of mic': 3, 'resolution at journal': 4 });

  it('cancels in a difference', () => {
    expect([...subtractValues(bore, journal).terms.keys()]).toEqual([
      'resolution at bore',
      'resolution at journal',
    ]);
    expect(standardUncertainty(subtractValues(bore, journal))).toBeCloseTo(Math.sqrt(32), 12);
  });

  it('doubles in a sum', () => {
    expect(addValues(bore, journal).terms.get('largest error of mic')?.u).toBe(6);
  });

  it('counts in full in a mean, where the readings’ own errors shrink', () => {
    const { terms } = meanValue([bore, journal]);
    expect(terms.get('largest error of mic')?.u).toBeCloseTo(3, 12);
    expect(terms.get('resolution at bore')?.u).toBe(2);
  });

  it('has no mean of nothing', () => expect(() => meanValue([])).toThrow('the mean of no values'));

  it('of one alone is handed on as it stands', () => {
    const own = journal.terms.get('resolution at journal');
    expect(addValues(bore, journal).terms.get('resolution at journal')).toBe(own);
  });

  it('is only partly taken away where the other holds more of it', () => {
    const twice = scaleValue(journal, fraction(2));
    expect(subtractValues(bore, twice).terms.get('largest error of mic')?.u).toBe(-3);
    expect(standardUncertainty(subtractValues(bore, twice))).toBeCloseTo(Math.sqrt(9 + 16 + 64), 12);
  });
});

describe('values that share nothing', () => {
  it('combine by the root sum of squares (JCGM 100:2008, 5.1.2)', () => {
    const [a, b] = [read('1', { a: 3 }), read('2', { b: 4 })];
    expect(standardUncertainty(addValues(a, b))).toBe(5);
    expect(standardUncertainty(subtractValues(a, b))).toBe(5);
  });

  it('whose amount is exact add no error', () => {
    expect(exactly(parseDecimal('3.25')).terms.size).toBe(0);
    expect(addValues(exactly(fraction(1)), read('2', { a: 3 })).terms.get('a')?.u).toBe(3);
  });
});

describe('amounts stay exact', () => {
  it('adding and taking away again gives the value back', () => {
    fc.assert(
      fc.property(anyValue, anyValue, (a, b) => {
        expect(equals(subtractValues(addValues(a, b), b).amount, a.amount)).toBe(true);
      }),
      RUNS,
    );
  });

  it('the mean is the mean of fractions, never rounded', () => {
    fc.assert(
      fc.property(fc.array(anyValue, { minLength: 1, maxLength: 5 }), (values) => {
        const found = meanValue(values).amount;
        expect(equals(found, mean(values.map(({ amount }) => amount)))).toBe(true);
        const fromSum = values.map(({ amount }) => amount).reduce(add);
        expect(equals(found, { n: fromSum.n, d: fromSum.d * BigInt(values.length) })).toBe(true);
      }),
      RUNS,
    );
  });

  it('the order of readings changes neither amount nor sources', () => {
    fc.assert(
      fc.property(anyValue, anyValue, (a, b) => {
        expect(equals(addValues(a, b).amount, addValues(b, a).amount)).toBe(true);
        expect([...addValues(a, b).terms.keys()].sort()).toEqual([...addValues(b, a).terms.keys()].sort());
      }),
      RUNS,
    );
  });

  it('there is no mean of nothing', () => expect(() => meanValue([])).toThrow(RangeError));
});

describe('what is known of an error goes with it', () => {
  const known: ErrorTerm = { u: 3, dof: 5, estimate: 'study of mic', instrument: 'mic' };
  const of = (source: string): Value => ({ amount: fraction(1), terms: new Map([[source, known]]) });

  it.each([
    ['a scaled value', scaleValue(of('a'), fraction(2)), { a: 6 }],
    ['a sum', addValues(of('a'), of('b')), { a: 3, b: 3 }],
    ['a difference', subtractValues(of('a'), of('b')), { a: 3, b: -3 }],
    ['a mean', meanValue([of('a'), of('b')]), { a: 1.5, b: 1.5 }],
    ['a sum of what is shared', addValues(of('a'), of('a')), { a: 6 }],
  ] as const)('through %s', (_, value, sizes) => {
    expect(Object.fromEntries(value.terms)).toEqual(
      Object.fromEntries(Object.entries(sizes).map(([source, u]) => [source, { ...known, u }])),
    );
  });
});

describe('an amount that moves with others', () => {
  it('has the errors of each by its slope, and none of one whose slope is nothing', () => {
    const found = combineValues(parseDecimal('7'), [
      [read('1', { mic: 3, a: 1 }), 2],
      [read('2', { mic: 4, b: 1 }), -1],
      [read('3', { c: 5 }), 0],
    ]);
    expect(found.amount).toEqual(parseDecimal('7'));
    expect(Object.fromEntries([...found.terms].map(([source, { u }]) => [source, u]))).toEqual({
      mic: 2,
      a: 2,
      b: -1,
    });
  });
});

describe('a reading that was given as a range', () => {
  const range = { below: fraction(1), above: undefined };
  const terms = new Map<string, ErrorTerm>([
    ['range read', { u: 3, dof: KNOWN, isRange: true }],
    ['mic', { u: 4, dof: KNOWN }],
  ]);
  const given = lateValue(fraction(5), () => terms, range);

  it('is as uncertain as its range and its instrument together', () => {
    expect(given.range).toBe(range);
    expect(standardUncertainty(given)).toBe(5);
  });

  it('looked at by its range has its instrument’s errors left', () => {
    const left = withoutRange(given);
    expect([left.amount, left.range, [...left.terms.keys()]]).toEqual([fraction(5), undefined, ['mic']]);
  });

  it('works its sources out once, when they are asked for', () => {
    let asked = 0;
    const late = lateValue(fraction(5), () => {
      asked += 1;
      return terms;
    });
    expect(asked).toBe(0);
    expect(late.terms).toBe(terms);
    expect(late.terms).toBe(terms);
    expect(asked).toBe(1);
  });
});

it('of one reading the mean is that reading, and what is exact adds no list of sources', () => {
  const one = read('1', { mic: 3 });
  expect(meanValue([one])).toBe(one);
  expect(addValues(one, exactly(fraction(1))).terms).toBe(one.terms);
});
