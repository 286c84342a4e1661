import type { Measured } from '../../../src/characteristics/grid.ts';
import type { Route } from '../../../src/checks/value/route.ts';
import { exactly } from '../../../src/measurement/value.ts';
import { fraction } from '../../../src/quantity/fraction.ts';

export const measuredAs = (least: number, greatest = least, mean = (least + greatest) / 2): Measured => ({
  least: exactly(fraction(least)),
  mean: exactly(fraction(Math.round(mean))),
  greatest: exactly(fraction(greatest)),
});

/** As much of a route as what compares routes looks at: a reading of a block, unless more is said. */
export const routeOf = (more: Partial<Route> = {}): Route =>
  ({
    name: 'read directly',
    with: ['mic'],
    grid: { stations: [{}], directions: [undefined], rows: [] },
    measured: measuredAs(10),
    u: 1,
    written: [],
    inputs: [],
    block: {},
    takenOn: '2026-02-03',
    takenFrom: undefined,
    ...more,
  }) as Route;
