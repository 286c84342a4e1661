import fc from 'fast-check';
import { inv, type Matrix, matrix, multiply } from 'mathjs';
import { expect, it } from 'vitest';
import { normalQuantile } from '../../src/measurement/distributions/normal.ts';
import { twoSidedT } from '../../src/measurement/distributions/studentT.ts';
import type { LinePoint } from '../../src/measurement/line.ts';
import {
  confidenceInterval,
  inversePrediction,
  predictionInterval,
  slopeHalfWidth,
} from '../../src/measurement/linePrediction.ts';
import { evenly } from '../evenly.ts';
import { runs } from '../propertyRuns.ts';
import { mustFit } from './mustFit.ts';

interface Case {
  readonly points: readonly LinePoint[];
  readonly sources: readonly string[];
}

/** Readings about a line, from up to three instruments; one of them may have been set in another. */
const anyCase: fc.Arbitrary<Case> = fc
  .tuple(
    fc.array(
      fc.record({
        apart: evenly(0.2, 2),
        off: evenly(-3, 3),
        own: evenly(0.3, 3),
        from: fc.constantFrom('a', 'b', 'c'),
      }),
      { minLength: 3, maxLength: 9 },
    ),
    fc.record({ a: evenly(0, 20), b: evenly(-20, 20), c: evenly(0, 20) }),
    evenly(-5, 5),
    fc.boolean(),
  )
  .map(([readings, sizes, slope, isSet]) => {
    let x = 1;
    const points = readings.map(({ apart, off, own, from }) => {
      x += apart;
      const shared = new Map([[from, sizes[from]]]);
      if (isSet && from === 'b') shared.set('a', sizes.a);
      return { x, y: 40 + slope * x + off, own, shared };
    });
    return { points, sources: ['a', 'b', 'c'] };
  });

/**
 * The same line as unknowns of one plain least-squares problem: intercept, slope, and each shared error with an
 * observation of its own that it is nought, give or take one. No covariance is inverted.
 */
function augmented({ points, sources }: Case, scatter: number) {
  const rows = points.map(({ x, own = 0, shared }) =>
    [1, x, ...sources.map((source) => shared?.get(source) ?? 0)].map((each) => each / own / scatter),
  );
  const observed = sources.map((_, at) => [0, 0, ...sources.map((__, other) => (at === other ? 1 : 0))]);
  const design = matrix([...rows, ...observed]);
  const solver = multiply(inv(multiply(turned(design), design)), turned(design));
  const heights = points.map(({ y, own = 0 }) => y / own / scatter);
  const found = product(solver, [...heights, ...sources.map(() => 0)]);
  const squares = product(design, found).map((each, index) => ((heights[index] ?? 0) - each) ** 2);
  return { solver, found, size: squares.reduce((a, b) => a + b) };
}

function turned(of: Matrix): Matrix {
  const rows = of.toArray() as number[][];
  return matrix((rows[0] ?? []).map((_, column) => rows.map((row) => row[column] ?? Number.NaN)));
}

const product = (by: Matrix, column: readonly number[]): readonly number[] =>
  (multiply(by, matrix([...column])) as Matrix).toArray() as number[];

/** By halving, where the program takes Newton's steps. */
function scatterOf(of: Case): number {
  const dof = of.points.length - 2;
  let [low, high] = [1, 1];
  while (augmented(of, high).size > dof) high *= 2;
  for (let step = 0; high > 1 && step < 60; step++) {
    const middle = (low + high) / 2;
    if (augmented(of, middle).size > dof) low = middle;
    else high = middle;
  }
  return high;
}

/** The line at an x as the numbers by which it takes each reading's height. */
function shareAt({ points, sources }: Case, scatter: number, solver: Matrix) {
  const [level = [], rising = []] = solver.toArray() as number[][];
  const own = points.map(({ own: u = 0 }) => u * scatter);
  const weights = (x: number): readonly number[] =>
    points.map((_, index) => ((level[index] ?? 0) + x * (rising[index] ?? 0)) / (own[index] ?? 0));
  return (at: readonly number[], last: 0 | 1) => {
    const effect = sources.map((source) => {
      const offs = points.map(({ shared }) => shared?.get(source) ?? 0);
      return offs.reduce((sum, off, index) => sum + off * (at[index] ?? 0), -last * (offs.at(-1) ?? 0));
    });
    const alone = [...own.map((u, index) => u * (at[index] ?? 0)), last * (own.at(-1) ?? 0)];
    return { weights, effect: Math.hypot(...effect), alone: Math.hypot(...alone) };
  };
}

function recomputed(of: Case) {
  const scatter = scatterOf(of);
  const { solver, found } = augmented(of, scatter);
  const [intercept = Number.NaN, slope = Number.NaN] = found;
  const share = shareAt(of, scatter, solver);
  const { weights } = share([], 0);
  const t = twoSidedT(0.95, of.points.length - 2);
  const half = (at: readonly number[], last: 0 | 1 = 0): number => {
    const { effect, alone } = share(at, last);
    return Math.hypot(t * alone, normalQuantile(0.975) * effect);
  };
  const atOne = weights(1);
  return {
    scatter,
    slope,
    valueAt: (x: number) => intercept + slope * x,
    halfAt: (x: number) => half(weights(x)),
    halfOfNext: (x: number) => half(weights(x), 1),
    slopeHalf: half(weights(0).map((each, index) => (atOne[index] ?? 0) - each)),
  };
}

const agrees = (got: number | null | undefined, expected: number, scale = Math.abs(expected)): void =>
  expect(Math.abs((got ?? Number.NaN) - expected) / Math.max(scale, 1)).toBeLessThan(1e-9);

it('a line through readings that share errors agrees with its errors taken as unknowns', {
  timeout: 300_000,
}, () => {
  const RUNS = runs(1000);
  let scattered = 0;
  fc.assert(
    fc.property(anyCase, (of) => {
      const fit = mustFit(of.points);
      const expected = recomputed(of);
      if (expected.scatter > 1) scattered += 1;
      agrees(fit.scatter, expected.scatter);
      agrees(fit.slope, expected.slope);
      agrees(slopeHalfWidth(fit), expected.slopeHalf);
      const ahead = (of.points.at(-1)?.x ?? 0) + 1;
      const line = confidenceInterval(fit, ahead);
      agrees(line.value, expected.valueAt(ahead));
      agrees((line.interval?.upper ?? 0) - line.value, expected.halfAt(ahead));
      const next = predictionInterval(fit, ahead);
      agrees((next.interval?.upper ?? 0) - next.value, expected.halfOfNext(ahead));
      // What Fieller's theorem asks: at the ends of the interval the limit lies on the edge of that of the line.
      const { interval, g } = inversePrediction(fit, 60);
      expect(interval === null).toBe(expected.slopeHalf >= Math.abs(expected.slope));
      if (interval === null || g === null || g > 0.999) return;
      for (const x of [interval.lower, interval.upper])
        agrees(Math.abs(60 - expected.valueAt(x)), expected.halfAt(x));
    }),
    RUNS,
  );
  // Readings that scatter more than they are uncertain by, and those that do not.
  expect(scattered).toBeGreaterThan(RUNS.numRuns / 5);
  expect(scattered).toBeLessThan((4 * RUNS.numRuns) / 5);
});
