/** One way to serve a place, such as two shell halves of one journal. */
export interface Option {
  readonly cost: number;
  /** How many of each item in stock it takes, by the item's index. */
  readonly takes: readonly (readonly [item: number, count: number])[];
}

export interface Allocation {
  /** The index of the option chosen for each place. */
  readonly options: readonly number[];
  readonly cost: number;
}

interface Best {
  readonly cost: number;
  readonly rest: readonly number[];
}

/**
 * One option for each place at the least sum of costs, so that no item is taken more often than there is of it; undefined
 * where stock does not serve every place. Exact: place after place, each state of the stock that is left worked out once.
 */
export function allocate(
  places: readonly (readonly Option[])[],
  stock: readonly number[],
): Allocation | undefined {
  const wanted = stock.map((_, item) => places.reduce((most, options) => most + mostOf(options, item), 0));
  const known = new Map<string, Best | undefined>();
  const solve = (place: number, left: readonly number[]): Best | undefined => {
    const options = places[place];
    if (options === undefined) return { cost: 0, rest: [] };
    const key = `${place} ${left.join(' ')}`;
    if (!known.has(key)) known.set(key, best(options, place, left));
    return known.get(key);
  };
  const best = (options: readonly Option[], place: number, left: readonly number[]): Best | undefined => {
    let found: Best | undefined;
    for (const [index, { cost, takes }] of options.entries()) {
      const after = taken(left, takes);
      const rest = after && solve(place + 1, after);
      if (rest === undefined) continue;
      const total = cost + rest.cost;
      if (found === undefined || total < found.cost) found = { cost: total, rest: [index, ...rest.rest] };
    }
    return found;
  };
  // More of an item than anybody could take makes no other state.
  const found = solve(
    0,
    stock.map((count, item) => Math.min(count, wanted[item] ?? 0)),
  );
  return found && { options: found.rest, cost: found.cost };
}

const mostOf = (options: readonly Option[], item: number): number =>
  Math.max(0, ...options.map(({ takes }) => countOf(takes, item)));

const countOf = (takes: Option['takes'], item: number): number =>
  takes.reduce((sum, [each, count]) => sum + (each === item ? count : 0), 0);

function taken(left: readonly number[], takes: Option['takes']): readonly number[] | undefined {
  const after = [...left];
  for (const [item, count] of takes) {
    after[item] = (after[item] ?? 0) - count;
    if ((after[item] ?? 0) < 0) return undefined;
  }
  return after;
}
