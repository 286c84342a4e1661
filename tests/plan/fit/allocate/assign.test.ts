import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assign, type Cost } from '../../../../src/plan/fit/allocate/assign.ts';
import { runs } from '../../../propertyRuns.ts';

/** The cheapest of every way to give each row a column of its own. */
function byTrying(costs: readonly (readonly Cost[])[], taken: ReadonlySet<number> = new Set()): Cost {
  const [row, ...rest] = costs;
  if (row === undefined) return 0;
  const totals = row.flatMap((cost, column) => {
    if (cost === undefined || taken.has(column)) return [];
    const others = byTrying(rest, new Set([...taken, column]));
    return others === undefined ? [] : [cost + others];
  });
  return totals.length === 0 ? undefined : Math.min(...totals);
}

const costTable = fc
  .tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 6 }))
  .chain(([rows, columns]) =>
    fc.array(
      fc.array(fc.option(fc.integer({ min: 0, max: 9 }), { nil: undefined, freq: 4 }), {
        minLength: columns,
        maxLength: columns,
      }),
      { minLength: rows, maxLength: rows },
    ),
  );

describe('an assignment', () => {
  it('costs as little as the best of all, found by trying them', () => {
    fc.assert(
      fc.property(costTable, (costs) => {
        const found = assign(costs);
        expect(found?.cost).toBe(byTrying(costs));
        if (found !== undefined) expect(new Set(found.columns).size).toBe(costs.length);
      }),
      { seed: 20_261_128, ...runs(2_000) },
    );
  });

  it('moves a row that has its column already where that costs less', () => {
    // Invented figures, worked by hand.
    expect(
      assign([
        [1, 9, 9],
        [1, 2, 9],
        [9, 2, 3],
      ])?.cost,
    ).toBe(6);
  });
});
