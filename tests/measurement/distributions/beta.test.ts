import { expect, test } from 'vitest';
import { betaPower, incompleteBeta } from '../../../src/measurement/distributions/beta.ts';

// DLMF 8.17.5: for whole numbers the incomplete beta function is a sum of binomial terms.
const binomialTail = (x: number, a: number, b: number): number => {
  const n = a + b - 1;
  let sum = 0;
  for (let j = a; j <= n; j++) {
    let choose = 1;
    for (let i = 0; i < j; i++) choose *= (n - i) / (i + 1);
    sum += choose * x ** j * (1 - x) ** (n - j);
  }
  return sum;
};

test.each([
  [0.25, 2, 3],
  [0.5, 5, 1],
  [0.75, 2, 3],
  [0.125, 1, 7],
  [0.9375, 6, 6],
])('I of %f with %i and %i is a sum of binomial terms, and what is above makes it one', (x, a, b) => {
  const { below, above } = incompleteBeta(x, 1 - x, a, b);
  expect(below).toBeCloseTo(binomialTail(x, a, b), 14);
  expect(above).toBeCloseTo(binomialTail(1 - x, b, a), 14);
});

test('nothing lies below zero, and nothing above one', () => {
  expect(incompleteBeta(0, 1, 2, 3)).toEqual({ below: 0, above: 1 });
  expect(incompleteBeta(1, 0, 2, 3)).toEqual({ below: 1, above: 0 });
});

// B(2, 3) = 1/12, B(1/2, 1/2) = π, B(10, 10) = 1/923780.
test.each([
  [0.5, 2, 3, 12 / 32],
  [0.5, 0.5, 0.5, 0.5 / Math.PI],
  [0.5, 10, 10, 923780 / 2 ** 20],
  [0, 2, 3, 0],
])('the power of %f with %f and %f is over their beta function', (x, a, b, expected) => {
  expect(betaPower(x, 1 - x, a, b)).toBeCloseTo(expected, 14);
});

test('what cannot be worked out is said, not guessed', () => {
  expect(() => incompleteBeta(0.5, 0.5, 1e12, 1e12)).toThrow(
    'no convergence of the incomplete beta function at x = 0.5, a = 1000000000000, b = 1000000000000',
  );
});
