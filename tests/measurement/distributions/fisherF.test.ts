import { expect, test } from 'vitest';
import { fUpperTail } from '../../../src/measurement/distributions/fisherF.ts';
import { tCdf } from '../../../src/measurement/distributions/studentT.ts';
import { referenceRows, relativeError } from './reference.ts';

test('what the upper tail leaves is the distribution of the 50-digit table', () => {
  const rows = referenceRows('fcdf');
  expect(rows).toHaveLength(130);
  for (const { given, value } of rows) {
    const [at = 0, top = 0, bottom = 0] = given;
    expect(1 - fUpperTail(at, top, bottom)).toBeCloseTo(value, 13);
  }
});

test('at a quantile of the 50-digit table it is the probability that is left', () => {
  const rows = referenceRows('fq');
  expect(rows).toHaveLength(91);
  for (const { given, value } of rows) {
    const [p = 0, top = 0, bottom = 0] = given;
    expect(fUpperTail(value, top, bottom)).toBeCloseTo(1 - p, 12);
  }
});

test('it keeps its digits far out', () => {
  // With one degree of freedom on top, F is the square of t.
  expect(relativeError(fUpperTail(900, 1, 20), 2 * tCdf(-30, 20))).toBeLessThan(1e-13);
  expect(fUpperTail(1e5, 4, 20)).toBeGreaterThan(0);
});

test('the ends of the scale', () => {
  expect(fUpperTail(0, 2, 3)).toBe(1);
  expect(fUpperTail(Number.POSITIVE_INFINITY, 2, 3)).toBe(0);
});

test('degrees of freedom that are not above zero and finite are refused', () => {
  for (const [dof, words] of [
    [0, 'degrees of freedom lie above zero, not at 0'],
    [Number.NaN, 'degrees of freedom lie above zero, not at NaN'],
    [Number.POSITIVE_INFINITY, 'F needs finite degrees of freedom'],
  ] as const) {
    expect(() => fUpperTail(1, dof, 3)).toThrow(words);
    expect(() => fUpperTail(1, 3, dof)).toThrow(words);
  }
});
