import { expect, test } from 'vitest';
import { tCdf, tQuantile, twoSidedT } from '../../../src/measurement/distributions/studentT.ts';
import { referenceRows, relativeError, worst } from './reference.ts';

const INFINITE = Number.POSITIVE_INFINITY;

/** Relative errors of the rows whose degrees of freedom lie above `over` and up to `upTo`. */
function errorsOf(table: 'tq' | 'tcdf', over: number, upTo: number): readonly number[] {
  const evaluate = table === 'tq' ? tQuantile : tCdf;
  return referenceRows(table)
    .filter(({ given: [, dof = 0] }) => dof > over && dof <= upTo)
    .map(({ given: [at = 0, dof = 0], value }) => relativeError(evaluate(at, dof), value));
}

test.each([
  ['the t quantile', 'tq', 0, 1000, 256, 1e-13],
  ['the t quantile', 'tq', 1000, 1e7, 32, 1e-13],
  ['the t distribution', 'tcdf', 0, 1000, 208, 1e-13],
  ['the t distribution', 'tcdf', 1000, 1e7, 26, 1e-13],
] as const)(
  '%s (%s) from %d up to %d degrees of freedom agrees with the 50-digit table',
  (_, table, over, upTo, rows, aim) => {
    const errors = errorsOf(table, over, upTo);
    expect(errors).toHaveLength(rows);
    expect(worst(errors).error).toBeLessThan(aim);
  },
);

// NIST TN 1297 table B.1, which is table G.2 of JCGM 100:2008. Two of its cells are misprinted and left out (`-`):
// 1 degree of freedom at 99.73 % prints 235.80 (exact 235.784), 35 at 90 % prints 1.70 (exact 1.690).
const FRACTIONS = [0.6827, 0.9, 0.95, 0.9545, 0.99, 0.9973];
const TABLE_G2: readonly (readonly [number, string])[] = [
  [1, '1.84 6.31 12.71 13.97 63.66 -'],
  [2, '1.32 2.92 4.30 4.53 9.92 19.21'],
  [3, '1.20 2.35 3.18 3.31 5.84 9.22'],
  [4, '1.14 2.13 2.78 2.87 4.60 6.62'],
  [5, '1.11 2.02 2.57 2.65 4.03 5.51'],
  [6, '1.09 1.94 2.45 2.52 3.71 4.90'],
  [7, '1.08 1.89 2.36 2.43 3.50 4.53'],
  [8, '1.07 1.86 2.31 2.37 3.36 4.28'],
  [9, '1.06 1.83 2.26 2.32 3.25 4.09'],
  [10, '1.05 1.81 2.23 2.28 3.17 3.96'],
  [11, '1.05 1.80 2.20 2.25 3.11 3.85'],
  [12, '1.04 1.78 2.18 2.23 3.05 3.76'],
  [13, '1.04 1.77 2.16 2.21 3.01 3.69'],
  [14, '1.04 1.76 2.14 2.20 2.98 3.64'],
  [15, '1.03 1.75 2.13 2.18 2.95 3.59'],
  [16, '1.03 1.75 2.12 2.17 2.92 3.54'],
  [17, '1.03 1.74 2.11 2.16 2.90 3.51'],
  [18, '1.03 1.73 2.10 2.15 2.88 3.48'],
  [19, '1.03 1.73 2.09 2.14 2.86 3.45'],
  [20, '1.03 1.72 2.09 2.13 2.85 3.42'],
  [25, '1.02 1.71 2.06 2.11 2.79 3.33'],
  [30, '1.02 1.70 2.04 2.09 2.75 3.27'],
  [35, '1.01 - 2.03 2.07 2.72 3.23'],
  [40, '1.01 1.68 2.02 2.06 2.70 3.20'],
  [45, '1.01 1.68 2.01 2.06 2.69 3.18'],
  [50, '1.01 1.68 2.01 2.05 2.68 3.16'],
  [100, '1.005 1.660 1.984 2.025 2.626 3.077'],
  [INFINITE, '1.000 1.645 1.960 2.000 2.576 3.000'],
];

test('the table of t factors is whole: 28 rows of six, less the two misprints', () => {
  const cells = TABLE_G2.flatMap(([, row]) => row.split(' ')).filter((cell) => cell !== '-');
  expect(cells).toHaveLength(28 * 6 - 2);
});

test.each(TABLE_G2)('the t factors of %d degrees of freedom are those printed in table G.2', (dof, row) => {
  const printed = row.split(' ');
  const worked = printed.map((cell, column) => {
    if (cell === '-') return '-';
    const places = cell.length - cell.indexOf('.') - 1;
    return twoSidedT(FRACTIONS[column] ?? Number.NaN, dof).toFixed(places);
  });
  expect(worked).toEqual(printed);
});

test('the misprinted cells are what the note beside the table says', () => {
  expect(twoSidedT(0.9973, 1)).toBeCloseTo(235.784, 3);
  expect(twoSidedT(0.9, 35)).toBeCloseTo(1.6896, 4);
});

test('the lower tail keeps its digits where one minus the upper tail would be nothing', () => {
  // One degree of freedom is the arctangent: 1/2 − atan(t)/π, which is 1/(πt) far out.
  expect(relativeError(tCdf(-1e20, 1), 1 / (Math.PI * 1e20))).toBeLessThan(1e-14);
  expect(tCdf(-9, 1000)).toBeGreaterThan(0);
});

test('the ends, the middle and infinitely many degrees of freedom', () => {
  expect(tQuantile(0, 3)).toBe(-INFINITE);
  expect(tQuantile(1, 3)).toBe(INFINITE);
  expect(tQuantile(0.5, 3)).toBe(0);
  expect(tCdf(0, 3)).toBe(0.5);
  expect(tCdf(-INFINITE, 3)).toBe(0);
  expect(tCdf(1.5, INFINITE)).toBeCloseTo(0.9331927987311419, 15);
  expect(tQuantile(0.975, INFINITE)).toBeCloseTo(1.959963984540054, 14);
});

test('degrees of freedom of zero or less, or none, are refused', () => {
  for (const dof of [0, -1, Number.NaN]) {
    expect(() => tQuantile(0.975, dof)).toThrow('degrees of freedom lie above zero');
    expect(() => tCdf(1, dof)).toThrow('degrees of freedom lie above zero');
  }
});

test.each([0.3, 1, 2.5, 7, 100, 1e6])(
  'with %f degrees of freedom the quantile undoes the distribution, far out too',
  (dof) => {
    for (const p of [1e-30, 1e-12, 1e-5, 0.02, 0.3, 0.499]) {
      expect(relativeError(tCdf(tQuantile(p, dof), dof), p)).toBeLessThan(1e-9);
      expect(tQuantile(p, dof)).toBeLessThan(0);
    }
    for (const p of [0.501, 0.7, 0.98]) expect(tQuantile(p, dof)).toBeCloseTo(-tQuantile(1 - p, dof), 9);
  },
);

test('the two ways of working meet where the one takes over from the other', () => {
  for (const t of [-6, -2, -0.1]) {
    expect(relativeError(tCdf(t, 10_000 * (1 + 1e-12)), tCdf(t, 10_000))).toBeLessThan(1e-12);
  }
  for (const p of [1e-9, 0.025, 0.4]) {
    expect(relativeError(tQuantile(p, 10_000 * (1 + 1e-12)), tQuantile(p, 10_000))).toBeLessThan(3e-14);
  }
});

test('a million million degrees of freedom are the normal distribution to ten digits', () => {
  expect(tQuantile(0.975, 1e12)).toBeCloseTo(1.959963984540054, 10);
  expect(tCdf(-INFINITE, 1e12)).toBe(0);
  expect(tQuantile(1, 1e12)).toBe(INFINITE);
});

test('near the middle a quantile keeps its digits: of one degree of freedom it is a tangent', () => {
  for (const beside of [2 ** -40, -(2 ** -40)]) {
    expect(relativeError(tQuantile(0.5 + beside, 1), Math.tan(Math.PI * beside))).toBeLessThan(1e-12);
  }
});

test('what is no probability is refused with degrees of freedom of any number', () => {
  for (const dof of [3, INFINITE])
    expect(() => tQuantile(-0.1, dof)).toThrow('a probability lies between 0 and 1, not at -0.1');
});
