import { expect, test } from 'vitest';
import { oneWayAnova } from '../../src/measurement/variance.ts';
import { readRows } from './csv.ts';

// NIST Statistical Reference Datasets, one-way analysis of variance, certified values.
test('SiRstv, resistivity of silicon by five instruments', () => {
  const rows = readRows('nist-strd-sirstv');
  const readings = ['1', '2', '3', '4', '5'].map((instrument) =>
    rows.filter((row) => row.instrument === instrument).map((row) => Number(row.y)),
  );
  expect(readings.map((group) => group.length)).toEqual([5, 5, 5, 5, 5]);
  const anova = oneWayAnova(readings);
  expect(anova.between.dof).toBe(4);
  expect(anova.within.dof).toBe(20);
  const certified = [
    [anova.between.sumOfSquares, 5.11462616e-2],
    [anova.between.meanSquare, 1.27865654e-2],
    [anova.within.sumOfSquares, 2.1663656e-1],
    [anova.within.meanSquare, 1.0831828e-2],
    [anova.f, 1.18046237440255],
    [anova.rSquared, 1.90999039051129e-1],
    [anova.residualDeviation, 1.04076068334656e-1],
  ] as const;
  for (const [got, value] of certified) expect(Math.abs((got ?? 0) / value - 1)).toBeLessThan(2e-11);
});

test('groups of unequal size, by hand', () => {
  // Means 2 and 6, grand mean 3: between 3·(2 − 3)² + 1·(6 − 3)² = 12, within 2.
  const anova = oneWayAnova([[1, 2, 3], [6]]);
  expect(anova.between).toEqual({ sumOfSquares: 12, dof: 1, meanSquare: 12 });
  expect(anova.within).toEqual({ sumOfSquares: 2, dof: 2, meanSquare: 1 });
  expect(anova.f).toBe(12);
  // With one and two degrees of freedom, p is 1 − √(F / (F + 2)).
  expect(anova.p).toBeCloseTo(1 - Math.sqrt(12 / 14), 14);
});

test('groups without scatter differ for certain, and equal readings say nothing', () => {
  expect(
    oneWayAnova([
      [1, 1],
      [2, 2],
    ]),
  ).toMatchObject({ f: Number.POSITIVE_INFINITY, p: 0, rSquared: 1 });
  expect(
    oneWayAnova([
      [0.1, 0.1, 0.1],
      [0.1, 0.1, 0.1],
    ]),
  ).toMatchObject({ f: null, p: null, rSquared: null });
});

test('one group, an empty group or groups of one are refused', () => {
  expect(() => oneWayAnova([[1, 2, 3]])).toThrow(RangeError);
  expect(() => oneWayAnova([[1, 2, 3], []])).toThrow(RangeError);
  expect(() => oneWayAnova([[1], [2]])).toThrow(
    'an analysis of variance needs two groups, and repeats within them',
  );
});
