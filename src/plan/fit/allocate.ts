import { allocateByAssignment } from './allocateByAssignment.ts';
import { allocateBySearch } from './allocateBySearch.ts';

/** One way to serve a place, such as two shell halves of one journal. */
export interface Option {
  /** Nought or more. */
  readonly cost: number;
  /** How many of each item in stock it takes, by the item's index. */
  readonly takes: readonly (readonly [item: number, count: number])[];
}

/** The options of each place. */
export type Places = readonly (readonly Option[])[];

/** The index of the option chosen for each place; undefined where a place goes without. */
export type Choices = readonly (number | undefined)[];

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
