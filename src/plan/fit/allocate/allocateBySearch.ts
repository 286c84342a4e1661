import { cheapest, WHOLE_COSTS } from './cheapest.ts';
import type { Choices, Complete, Option, Places } from './option.ts';

/** Whatever options take: first how many places can be served, then how so many are served at the least cost. */
export function allocateBySearch(places: Places, stock: readonly number[]): Choices {
  const nobody: Complete = { options: places.map(({ length }) => length), cost: places.length };
  const counted = places.map((options) => [
    ...options.map(({ takes }) => ({ cost: 0, takes })),
    GOES_WITHOUT,
  ]);
  const most = cheapest(counted, stock, nobody, WHOLE_COSTS);
  // To go without is one more thing of which there is so much.
  const leave: Option = { cost: 0, takes: [[stock.length, 1]] };
  const known = {
    options: most.options,
    cost: most.options.reduce((sum, option, place) => sum + (places[place]?.[option]?.cost ?? 0), 0),
  };
  const found = cheapest(
    places.map((options) => [...options, leave]),
    [...stock, most.cost],
    known,
  );
  return found.options.map((option, place) => (option === places[place]?.length ? undefined : option));
}

const GOES_WITHOUT: Option = { cost: 1, takes: [] };
