import { assign, type Cost } from './assign.ts';
import type { Choices, Option, Places } from './option.ts';

/**
 * Where each place takes one item, and of that as many as every other place would: polynomial. Undefined where some option
 * takes two items, such as two halves of different walls.
 */
export function allocateByAssignment(places: Places, stock: readonly number[]): Choices | undefined {
  const portions = portionsOf(places);
  if (portions === undefined) return undefined;
  const items = stock.flatMap((count, item): readonly number[] => {
    const portion = portions.get(item);
    const most = portion === undefined ? 0 : Math.min(places.length, Math.floor(count / portion));
    return Array(most).fill(item);
  });
  const cheapest = places.map(cheapestByItem);
  // To go without counts more than all else together; each place has a column for it behind the pieces of stock.
  // The column of the last place comes first: of places that are alike the last goes without.
  const without = places.reduce((sum, options) => sum + Math.max(0, ...options.map(({ cost }) => cost)), 1);
  const found = assign(
    cheapest.map((options, place): readonly Cost[] => [
      ...items.map((item) => options.get(item)?.cost),
      ...places.map((_, other) => (other === places.length - 1 - place ? without : undefined)),
    ]),
  );
  return found?.columns.map((column, place) => cheapest[place]?.get(items[column] ?? -1)?.index) ?? [];
}

/** How many of each item are taken at a time. */
function portionsOf(places: Places): ReadonlyMap<number, number> | undefined {
  const portions = new Map<number, number>();
  for (const { takes } of places.flat()) {
    const [first, ...others] = takes;
    if (first === undefined || others.length > 0) return undefined;
    const [item, count] = first;
    if ((portions.get(item) ?? count) !== count) return undefined;
    portions.set(item, count);
  }
  return portions;
}

interface Cheapest {
  readonly index: number;
  readonly cost: number;
}

function cheapestByItem(options: readonly Option[]): ReadonlyMap<number, Cheapest> {
  const cheapest = new Map<number, Cheapest>();
  for (const [index, { cost, takes }] of options.entries()) {
    for (const [item] of takes) {
      if (cost < (cheapest.get(item)?.cost ?? Number.POSITIVE_INFINITY)) cheapest.set(item, { index, cost });
    }
  }
  return cheapest;
}
