import { describe, expect, test } from 'vitest';
import { outlierOf } from '../../src/measurement/outlier.ts';
import { random } from '../checks/slips/generated/random.ts';

describe("Dixon's ratio", () => {
  test('the one that stands apart is found at either end, with its neighbour', () => {
    expect(outlierOf([5, 5.1, 9, 5.05, 4.95])).toEqual({
      index: 2,
      neighbour: 1,
      gap: expect.closeTo(3.9, 9),
    });
    expect(outlierOf([5, 5.1, 1, 5.05, 4.95])).toEqual({
      index: 2,
      neighbour: 4,
      gap: expect.closeTo(3.95, 9),
    });
  });

  // Dixon's r10 at 99 %, either end counted (Rorabacher 1991, from memory).
  test.each([
    [4, 0.926],
    [5, 0.821],
    [6, 0.74],
    [7, 0.68],
    [8, 0.634],
    [9, 0.598],
    [10, 0.568],
  ])('of %i readings a gap of more than %f of the range stands apart', (n, critical) => {
    const withGap = (share: number): readonly number[] => [
      ...Array.from({ length: n - 1 }, (_, index) => ((1 - share) * index) / (n - 2)),
      1,
    ];
    expect(outlierOf(withGap(critical - 0.0005))).toBeUndefined();
    expect(outlierOf(withGap(critical + 0.0005))?.index).toBe(n - 1);
  });

  test.each([
    [4, 926],
    [7, 680],
    [10, 568],
  ])('of %i readings a gap of just %i in a thousand is none', (n, gap) => {
    const apart = (gap: number) => outlierOf([...Array<number>(n - 2).fill(0), 1000 - gap, 1000]);
    expect(apart(gap)).toBeUndefined();
    expect(apart(gap + 1)?.gap).toBe(gap + 1);
  });

  test('of more than ten readings the ratio for ten serves', () => {
    const withGap = (share: number): readonly number[] => [
      ...Array.from({ length: 11 }, (_, index) => ((1 - share) * index) / 10),
      1,
    ];
    expect(outlierOf(withGap(0.5675))).toBeUndefined();
    expect(outlierOf(withGap(0.5685))).toEqual({ index: 11, neighbour: 10, gap: expect.closeTo(0.5685, 9) });
  });

  test('of fewer than four, of equal ones and of two that stand apart together nothing is said', () => {
    expect(outlierOf([1, 1, 9])).toBeUndefined();
    expect(outlierOf([2, 2, 2, 2])).toBeUndefined();
    expect(outlierOf([5, 5, 5, 9, 9])).toBeUndefined();
  });

  // Ten readings with which the ratio is usually shown, from memory, their first publication not seen: 0.010 of 0.022 is
  // below the 0.568 that Rorabacher (Analytical Chemistry 63, 1991, from memory) has for 99 %.
  test('the ratio 0.455 of ten readings is no outlier at 99 %', () => {
    const readings = [0.189, 0.167, 0.187, 0.183, 0.186, 0.182, 0.181, 0.184, 0.181, 0.177];
    expect(outlierOf(readings)).toBeUndefined();
  });

  test.each([4, 5, 6, 7, 8, 9, 10])(
    'of %i normal readings one stands apart by chance once in a hundred',
    (n) => {
      const next = random(n);
      const normal = (): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
      const runs = 20_000;
      let found = 0;
      for (let i = 0; i < runs; i++) {
        if (outlierOf(Array.from({ length: n }, normal)) !== undefined) found += 1;
      }
      // Three standard deviations of a share of 1 % in so many runs are 0.21 %.
      expect(found / runs).toBeGreaterThan(0.0079);
      expect(found / runs).toBeLessThan(0.0121);
    },
  );
});
