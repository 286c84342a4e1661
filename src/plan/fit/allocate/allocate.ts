import { allocateByAssignment } from './allocateByAssignment.ts';
import { allocateBySearch } from './allocateBySearch.ts';
import type { Choices, Option, Places } from './option.ts';

export interface Allocation {
  readonly options: Choices;
  readonly cost: number;
}

/**
 * An option for as many places as stock serves together, at the least sum of costs among all ways to serve so many, so that
 * no item is taken more often than there is of it. Exact.
 */
export function allocate(places: Places, stock: readonly number[]): Allocation {
  const alone = places.map((options) => options.map(eachItemOnce));
  const options = allocateByAssignment(alone, stock) ?? allocateBySearch(alone, stock);
  const chosen = options.flatMap((option, place) => places[place]?.[option ?? -1] ?? []);
  return { options, cost: chosen.reduce((sum, { cost }) => sum + cost, 0) };
}

/** Two halves of one code are one item, taken twice. */
function eachItemOnce({ cost, takes }: Option): Option {
  const counts = new Map<number, number>();
  for (const [item, count] of takes) counts.set(item, (counts.get(item) ?? 0) + count);
  return { cost, takes: [...counts] };
}
