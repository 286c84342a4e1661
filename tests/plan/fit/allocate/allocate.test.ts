import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allocate } from '../../../../src/plan/fit/allocate/allocate.ts';
import type { Option } from '../../../../src/plan/fit/allocate/option.ts';
import { runs } from '../../../propertyRuns.ts';

/** What a place counts for that goes without: more than all others together. */
const WITHOUT = 1000;

/** The cheapest of every way to take one option for each place or to leave it without, stock allowing. */
function byTrying(places: readonly (readonly Option[])[], stock: readonly number[]): number {
  const [options, ...rest] = places;
  if (options === undefined) return 0;
  const totals = options.flatMap(({ cost, takes }) => {
    const left = stock.map(
      (count, item) => count - takes.reduce((sum, [each, many]) => sum + (each === item ? many : 0), 0),
    );
    return left.some((count) => count < 0) ? [] : [cost + byTrying(rest, left)];
  });
  return Math.min(WITHOUT + byTrying(rest, stock), ...totals);
}

function worthOf(places: readonly (readonly Option[])[], stock: readonly number[]): number {
  const { options, cost } = allocate(places, stock);
  return cost + WITHOUT * options.filter((option) => option === undefined).length;
}

const ITEMS = 3;

const option: fc.Arbitrary<Option> = fc.record({
  cost: fc.integer({ min: 0, max: 9 }),
  takes: fc.array(fc.tuple(fc.integer({ min: 0, max: ITEMS - 1 }), fc.integer({ min: 1, max: 2 })), {
    minLength: 1,
    maxLength: 2,
  }),
});

/** Where every place takes one of one item, the choice is made another way. */
const single = option.map(
  ({ cost, takes }): Option => ({ cost, takes: takes.slice(0, 1).map(([item]) => [item, 1]) }),
);

const places = fc.oneof(
  ...[option, single].map((each) => fc.array(fc.array(each, { maxLength: 4 }), { maxLength: 5 })),
);
const stock = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: ITEMS, maxLength: ITEMS });

describe('what is taken from stock', () => {
  it('serves as many as can be, costs as little as the best of these, found by trying all, and is there', () => {
    fc.assert(
      fc.property(places, stock, (of, counts) => {
        expect(worthOf(of, counts)).toBe(byTrying(of, counts));
        const left = [...counts];
        for (const [place, index] of allocate(of, counts).options.entries()) {
          for (const [item, count] of of[place]?.[index ?? -1]?.takes ?? [])
            left[item] = (left[item] ?? 0) - count;
        }
        expect(left.every((count) => count >= 0)).toBe(true);
      }),
      { seed: 20_261_128, ...runs(2_000) },
    );
  });

  it('never gets worse as stock grows', () => {
    fc.assert(
      fc.property(places, stock, fc.integer({ min: 0, max: ITEMS - 1 }), (of, counts, item) => {
        const more = counts.map((count, index) => (index === item ? count + 1 : count));
        expect(worthOf(of, more)).toBeLessThanOrEqual(worthOf(of, counts));
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
        expect(worthOf(turned, counts.toReversed())).toBe(worthOf(of, counts));
      }),
      { seed: 20_261_130, ...runs(1_000) },
    );
  });
});
