import { summary, valuesOf } from '../../characteristics/grid.ts';
import type { Half } from '../../documents/grades/movement.ts';
import type { Route } from '../value/route.ts';
import { uncertaintyOf } from '../value/routes.ts';

/** What a route has of one half of a pair of shells; a single figure is of the upper one unless it says which. */
export function halfRoute(route: Route, half: Half): Route | undefined {
  const { stations, rows } = route.grid;
  const kept = rows.flatMap((_, index) => ((stations[index]?.name ?? 'upper') === half ? [index] : []));
  const grid = {
    ...route.grid,
    stations: kept.map((index) => stations[index] ?? {}),
    rows: kept.map((index) => rows[index] ?? []),
  };
  const measured = summary(valuesOf(grid));
  if (measured === undefined) return undefined;
  const written =
    rows.length === route.written.length
      ? kept.flatMap((index) => route.written[index] ?? [])
      : route.written;
  return { ...route, grid, measured, ...uncertaintyOf(measured), written };
}
