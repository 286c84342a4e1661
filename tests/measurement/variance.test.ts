import { expect, test } from 'vitest';
import { mean, squaresAboutMean } from '../../src/measurement/sample.ts';
import { compareVariances, varianceRow } from '../../src/measurement/variance.ts';
import { readRows } from './csv.ts';

// NIST Statistical Reference Datasets, one-way analysis of variance, certified values.
test('SiRstv, resistivity of silicon by five instruments', () => {
  const rows = readRows('nist-strd-sirstv');
  const readings = ['1', '2', '3', '4', '5'].map((instrument) =>
    rows.filter((row) => row.instrument === instrument).map((row) => Number(row.y)),
  );
  expect(readings.map((group) => group.length)).toEqual([5, 5, 5, 5, 5]);
  const between = varianceRow(5 * squaresAboutMean(readings.map(mean)), 4);
  const within = varianceRow(
    readings.map(squaresAboutMean).reduce((total, each) => total + each, 0),
    20,
  );
  const { f, p } = compareVariances(between, within);
  const certified = [
    [between.sumOfSquares, 5.11462616e-2],
    [between.meanSquare, 1.27865654e-2],
    [within.sumOfSquares, 2.1663656e-1],
    [within.meanSquare, 1.0831828e-2],
    [f, 1.18046237440255],
    [between.sumOfSquares / squaresAboutMean(readings.flat()), 1.90999039051129e-1],
    [Math.sqrt(within.meanSquare), 1.04076068334656e-1],
  ] as const;
  for (const [got, value] of certified) expect(Math.abs((got ?? 0) / value - 1)).toBeLessThan(2e-11);
  expect(p).toBeGreaterThan(0.3);
});

test('an F of 12 with one and two degrees of freedom, by hand', () => {
  const { f, p } = compareVariances(varianceRow(12, 1), varianceRow(2, 2));
  expect(f).toBe(12);
  // There p is 1 − √(F / (F + 2)).
  expect(p).toBeCloseTo(1 - Math.sqrt(12 / 14), 14);
});

test('rows without scatter differ for certain, and equal readings say nothing', () => {
  expect(compareVariances(varianceRow(1, 1), varianceRow(0, 2))).toEqual({
    f: Number.POSITIVE_INFINITY,
    p: 0,
  });
  expect(compareVariances(varianceRow(0, 1), varianceRow(0, 2))).toEqual({ f: null, p: null });
});
