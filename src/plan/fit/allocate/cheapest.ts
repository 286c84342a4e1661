import type { Complete, Option, Places } from './option.ts';
import { pricesOf } from './prices.ts';
import { Queue } from './queue.ts';

/** Places up to one served, and what that leaves for the others. */
interface State {
  readonly place: number;
  readonly left: readonly number[];
  readonly cost: number;
  /** What all places come to at least from here. */
  readonly atLeast: number;
  readonly before: State | undefined;
  readonly option: number;
}

/** Sums that differ by less came about by rounding. */
const ROUNDING = 1e-10;

/** The least sum that a bound allows where all costs are whole. */
export const WHOLE_COSTS = (bound: number): number => Math.ceil(bound - 1e-6);

/**
 * The cheapest way to serve every place, from a `known` one. Best first: the state that promises least is followed up, so that
 * the first one with all places behind it is the best of all (A*, Hart, Nilsson and Raphael 1968, from memory). Prices of items
 * tell what a state promises.
 */
export function cheapest(
  places: Places,
  stock: readonly number[],
  known: Complete,
  sumFrom: (bound: number) => number = (bound) => bound,
): Complete {
  const { prices, fromHere, met } = pricesOf(places, stock, known, sumFrom);
  const wanted = wantedFrom(places, stock.length);
  const reached = new Map<string, number>();
  const open = new Queue<State>(comesFirst);
  const enter = (place: number, rest: readonly number[], cost: number, option: number, before?: State) => {
    // More of an item than the places to come could take makes no other state.
    const left = rest.map((count, item) => Math.min(count, wanted[place]?.[item] ?? 0));
    const worth = left.reduce((sum, count, item) => sum + count * (prices[item] ?? 0), 0);
    const atLeast = sumFrom(cost + (fromHere[place] ?? 0) - worth);
    if (atLeast > met.cost - ROUNDING) return;
    const key = `${place} ${left.join(' ')}`;
    if (cost >= (reached.get(key) ?? Number.POSITIVE_INFINITY)) return;
    reached.set(key, cost);
    open.add({ place, left, cost, atLeast, before, option });
  };
  enter(0, stock, 0, -1);
  for (let state = open.next(); state !== undefined; state = open.next()) {
    const options = places[state.place];
    if (options === undefined) return { options: optionsTo(state), cost: state.cost };
    for (const [index, { cost, takes }] of options.entries()) {
      const after = taken(state.left, takes);
      if (after !== undefined) enter(state.place + 1, after, state.cost + cost, index, state);
    }
  }
  return met;
}

/** Of two that promise the same the one that is nearer to its end. */
const comesFirst = (a: State, b: State): boolean =>
  a.atLeast < b.atLeast || (a.atLeast === b.atLeast && a.place > b.place);

/** For each place, how many of each item it and all behind it could take. */
function wantedFrom(places: Places, items: number): readonly (readonly number[])[] {
  const wanted: (readonly number[])[] = [Array(items).fill(0)];
  for (const options of places.toReversed()) {
    const most: number[] = Array(items).fill(0);
    for (const [item, count] of options.flatMap(({ takes }) => takes))
      most[item] = Math.max(most[item] ?? 0, count);
    const [behind] = wanted;
    wanted.unshift(most.map((count, item) => count + (behind?.[item] ?? 0)));
  }
  return wanted;
}

function optionsTo(last: State): readonly number[] {
  const options: number[] = [];
  for (let state = last; state.before !== undefined; state = state.before) options.unshift(state.option);
  return options;
}

function taken(left: readonly number[], takes: Option['takes']): readonly number[] | undefined {
  if (takes.some(([item, count]) => (left[item] ?? 0) < count)) return undefined;
  const after = [...left];
  for (const [item, count] of takes) after[item] = (after[item] ?? 0) - count;
  return after;
}
