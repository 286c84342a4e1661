import { expect, test } from 'vitest';
import { fCdf, fQuantile, fUpperTail } from '../../../src/measurement/distributions/fisherF.ts';
import { tCdf } from '../../../src/measurement/distributions/studentT.ts';
import { referenceRows, relativeError, worst } from './reference.ts';

test.each([
  ['the F distribution', 'fcdf', fCdf, 130, 1e-13],
  ['the F quantile', 'fq', fQuantile, 91, 1e-13],
] as const)('%s (%s) agrees with the 50-digit table', (_, table, evaluate, rows, aim) => {
  const errors = referenceRows(table).map(({ given: [at = 0, top = 0, bottom = 0], value }) =>
    relativeError(evaluate(at, top, bottom), value),
  );
  expect(errors).toHaveLength(rows);
  expect(worst(errors).error).toBeLessThan(aim);
});

test('the upper tail is what the distribution leaves, and keeps its digits', () => {
  expect(fCdf(1.7, 3, 8) + fUpperTail(1.7, 3, 8)).toBeCloseTo(1, 15);
  // With one degree of freedom on top, F is the square of t.
  expect(relativeError(fUpperTail(900, 1, 20), 2 * tCdf(-30, 20))).toBeLessThan(1e-13);
  expect(fUpperTail(1e5, 4, 20)).toBeGreaterThan(0);
});

test('the ends of the scale', () => {
  expect(fCdf(0, 2, 3)).toBe(0);
  expect(fUpperTail(0, 2, 3)).toBe(1);
  expect(fUpperTail(Number.POSITIVE_INFINITY, 2, 3)).toBe(0);
  expect(fQuantile(0, 2, 3)).toBe(0);
  expect(fQuantile(1, 2, 3)).toBe(Number.POSITIVE_INFINITY);
});

test('degrees of freedom that are not above zero and finite are refused', () => {
  for (const dof of [0, Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(() => fCdf(1, dof, 3)).toThrow(RangeError);
    expect(() => fCdf(1, 3, dof)).toThrow(RangeError);
  }
});

test.each([
  [0.5, 0.5],
  [1, 1e5],
  [1e5, 1],
  [1e5, 1e5],
  [3, 200],
])('with %f and %f degrees of freedom the quantile undoes the distribution, far out too', (top, bottom) => {
  for (const p of [1e-30, 1e-10, 0.01, 0.4, 0.5, 0.9]) {
    expect(relativeError(fCdf(fQuantile(p, top, bottom), top, bottom), p)).toBeLessThan(1e-9);
  }
});
