import { expect, test } from 'vitest';
import { normalCdf, normalQuantile } from '../../../src/measurement/distributions/normal.ts';
import { referenceRows, relativeError, worst } from './reference.ts';

test('the normal distribution agrees with the 50-digit table, far tails included', () => {
  const errors = referenceRows('ncdf').map(({ given: [z = 0], value }) => relativeError(normalCdf(z), value));
  expect(errors).toHaveLength(23);
  expect(worst(errors).error).toBeLessThan(1e-14);
});

test('the normal quantile agrees with the 50-digit table', () => {
  const errors = referenceRows('nq').map(({ given: [p = 0], value }) => Math.abs(normalQuantile(p) - value));
  expect(errors).toHaveLength(17);
  expect(worst(errors).error).toBeLessThan(1e-14);
});

// JCGM 106:2012 table 1 (the rows are from memory, the four decimals were worked separately).
test.each([
  [0.8, 0.8416],
  [0.9, 1.2816],
  [0.95, 1.6449],
  [0.99, 2.3263],
  [0.999, 3.0902],
])('a one-sided probability of %f needs %f standard uncertainties', (p, z) => {
  expect(normalQuantile(p)).toBeCloseTo(z, 4);
  expect(normalCdf(z)).toBeCloseTo(p, 4);
});

test('the ends and the middle are exact', () => {
  expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
  expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
  expect(normalQuantile(0.5)).toBe(0);
  expect(normalCdf(0)).toBe(0.5);
  expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
});

test('what is no number stays none, and the smallest probability has a quantile', () => {
  expect(normalCdf(Number.NaN)).toBeNaN();
  expect(normalQuantile(Number.MIN_VALUE)).toBeCloseTo(-38.46, 1);
});

test('what is no probability is refused', () => {
  for (const p of [-0.1, 1.1, Number.NaN]) expect(() => normalQuantile(p)).toThrow(RangeError);
});

test('the quantile undoes the distribution, far out too', () => {
  for (const p of [1e-300, 1e-100, 1e-20, 0.1, 0.45, 0.4999]) {
    expect(relativeError(normalCdf(normalQuantile(p)), p)).toBeLessThan(1e-12);
  }
});

test('near the middle a quantile keeps its digits: there the distribution is its density times z', () => {
  for (const beside of [2 ** -40, -(2 ** -40)]) {
    expect(relativeError(normalQuantile(0.5 + beside), beside * Math.sqrt(2 * Math.PI))).toBeLessThan(1e-12);
  }
});

test('beyond all doubles nothing is left', () => {
  expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
  expect(normalCdf(-1e200)).toBe(0);
  expect(() => normalQuantile(1.5)).toThrow('a probability lies between 0 and 1, not at 1.5');
});
