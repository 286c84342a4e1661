import { expect, test } from 'vitest';
import {
  mean,
  median,
  medianAbsoluteDeviation,
  range,
  standardDeviation,
} from '../../src/measurement/sample.ts';
import { readColumn } from './csv.ts';

// NIST Statistical Reference Datasets, univariate summary: certified means and standard deviations. The tenths of
// NumAcc3 and NumAcc4 are not exact in binary, so that their deviation has fewer digits to be right in.
test.each([
  ['nist-strd-numacc1', 3, 10000002, 1, 1e-15],
  ['nist-strd-numacc2', 1001, 1.2, 0.1, 1e-14],
  ['nist-strd-numacc3', 1001, 1000000.2, 0.1, 1e-9],
  ['nist-strd-numacc4', 1001, 10000000.2, 0.1, 1e-7],
  ['nist-strd-michelso', 100, 299.8524, 0.0790105478190518, 1e-12],
])('mean and standard deviation of %s are the certified ones', (name, count, certified, deviation, aim) => {
  const values = readColumn(name, 'y');
  expect(values).toHaveLength(count);
  expect(Math.abs(mean(values) / certified - 1)).toBeLessThan(1e-15);
  expect(Math.abs(standardDeviation(values) / deviation - 1)).toBeLessThan(aim);
});

test.each([
  [[3], 3, 0],
  [[4, 1], 2.5, 1.5],
  [[9, 1, 2], 2, 1],
  [[1, 1, 2, 2, 4, 6, 9], 2, 1],
  [[10, 9, 100, 2], 9.5, 4],
])('the median of %j is %f, with a median absolute deviation of %f', (values, middle, spread) => {
  expect(median(values)).toBe(middle);
  expect(medianAbsoluteDeviation(values)).toBe(spread);
});

test('the readings are left in their order', () => {
  const readings = Object.freeze([3, 1, 2]);
  expect(median(readings)).toBe(2);
  expect(readings).toEqual([3, 1, 2]);
});

test('the mean of equal readings is the reading, and they have no deviation and no range', () => {
  expect(mean([0.1, 0.1, 0.1])).toBe(0.1);
  expect(standardDeviation([0.1, 0.1, 0.1])).toBe(0);
  expect(range([0.1, 0.1])).toBe(0);
});

test('the range runs from least to greatest', () => {
  expect(range([-2, 5, 1])).toBe(7);
});

test('no readings have no mean, and one has no standard deviation', () => {
  for (const of of [mean, median, range]) expect(() => of([])).toThrow('at least 1 values are needed, not 0');
  expect(() => standardDeviation([1])).toThrow('at least 2 values are needed, not 1');
});
