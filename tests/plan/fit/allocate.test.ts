import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allocate, type Option } from '../../../src/plan/fit/allocate.ts';
import { runs } from '../../propertyRuns.ts';

/** The cheapest of every way to take one option for each place, stock allowing. */
function byTrying(places: readonly (readonly Option[])[], stock: readonly number[]): number | undefined {
  const [options, ...rest] = places;
  if (options === undefined) return 0;
  const totals = options.flatMap(({ cost, takes }) => {
    const left = stock.map(
      (count, item) => count - takes.reduce((sum, [each, many]) => sum + (each === item ? many : 0), 0),
    );
    const others = left.some((count) => count < 0) ? undefined : byTrying(rest, left);
    return others === undefined ? [] : [cost + others];
  });
  return totals.length === 0 ? undefined : Math.min(...totals);
}

const ITEMS = 3;

const option: fc.Arbitrary<Option> = fc.record({
  cost: fc.integer({ min: 0, max: 9 }),
  takes: fc.array(fc.tuple(fc.integer({ min: 0, max: ITEMS - 1 }), fc.integer({ min: 1, max: 2 })), {
    minLength: 1,
    maxLength: 2,
  }),
});

const places = fc.array(fc.array(option, { maxLength: 4 }), { maxLength: 5 });
const stock = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: ITEMS, maxLength: ITEMS });

describe('what is taken from stock', () => {
  it('costs as little as the best of all, found by trying them, and is there', () => {
    fc.assert(
      fc.property(places, stock, (of, counts) => {
        const found = allocate(of, counts);
        expect(found?.cost).toBe(byTrying(of, counts));
        const left = [...counts];
        for (const [place, index] of (found?.options ?? []).entries()) {
          for (const [item, count] of of[place]?.[index]?.takes ?? []) left[item] = (left[item] ?? 0) - count;
        }
        expect(left.every((count) => count >= 0)).toBe(true);
      }),
      { seed: 20_261_128, ...runs(2_000) },
    );
  });

  it('never gets worse as stock grows', () => {
    fc.assert(
      fc.property(places, stock, fc.integer({ min: 0, max: ITEMS - 1 }), (of, counts, item) => {
        const fewer = allocate(of, counts)?.cost ?? Number.POSITIVE_INFINITY;
        const more = counts.map((count, index) => (index === item ? count + 1 : count));
        expect(allocate(of, more)?.cost ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(fewer);
      }),
      { seed: 20_261_129, ...runs(1_000) },
    );
  });

  it('costs the same in whatever order places and stock stand', () => {
    fc.assert(
      fc.property(places, stock, (of, counts) => {
        const last = counts.length - 1;
        const turned = of.toReversed().map((options) =>
          options.map(({ cost, takes }) => ({
            cost,
            takes: takes.map(([item, count]) => [last - item, count] as const),
          })),
        );
        expect(allocate(turned, counts.toReversed())?.cost).toBe(allocate(of, counts)?.cost);
      }),
      { seed: 20_261_130, ...runs(1_000) },
    );
  });
});
