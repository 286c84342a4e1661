import type { Complete, Option, Places } from './option.ts';

export interface Prices {
  /** Of each item: about what one more of it would save. */
  readonly prices: readonly number[];
  /** What each place and all behind it come to at least, if they pay for what they take. */
  readonly fromHere: readonly number[];
  /** The best choice that was known or came up on the way. */
  readonly met: Complete;
}

/** How often prices are mended, and after how many times in vain by half as much. */
const ROUNDS = 400;
const PATIENCE = 12;

/**
 * Prices at which places that take what suits each best want little more of any item than there is. Whatever the prices are,
 * what places pay less what stock is worth is never more than the best choice costs (Lagrangian relaxation; the steps are
 * Polyak's of 1969, from memory).
 */
export function pricesOf(
  places: Places,
  stock: readonly number[],
  known: Complete,
  sumFrom: (bound: number) => number,
): Prices {
  let prices: readonly number[] = stock.map(() => 0);
  let met = known;
  let best = { prices, bound: Number.NEGATIVE_INFINITY };
  let [step, idle] = [1, 0];
  for (let round = 0; round < ROUNDS; round += 1) {
    const wanted = places.flatMap((options) => suiting(options, prices) ?? []);
    const bound = wanted.reduce((sum, { pays }) => sum + pays, 0) - worthOf(stock, prices);
    idle = bound > best.bound ? 0 : idle + 1;
    if (bound > best.bound) best = { prices, bound };
    if (idle >= PATIENCE) [step, idle] = [step / 2, 0];
    met = cheaper(met, inTurn(places, stock, prices));
    const lacking = lackingOf(stock, wanted);
    const size = lacking.reduce((sum, each) => sum + each ** 2, 0);
    if (size === 0 || sumFrom(best.bound) >= met.cost) break;
    const by = (step * (met.cost - bound)) / size;
    prices = prices.map((price, item) => Math.max(0, price + by * (lacking[item] ?? 0)));
  }
  return { prices: best.prices, fromHere: paidFrom(places, best.prices), met };
}

const worthOf = (stock: readonly number[], prices: readonly number[]): number =>
  stock.reduce((sum, count, item) => sum + count * (prices[item] ?? 0), 0);

const cheaper = (a: Complete, b: Complete | undefined): Complete =>
  b !== undefined && b.cost < a.cost ? b : a;

function lackingOf(stock: readonly number[], wanted: readonly Suiting[]): readonly number[] {
  const lacking = stock.map((count) => -count);
  for (const [item, count] of wanted.flatMap(({ option }) => option.takes))
    lacking[item] = (lacking[item] ?? 0) + count;
  return lacking;
}

function paidFrom(places: Places, prices: readonly number[]): readonly number[] {
  const paid = [0];
  for (const options of places.toReversed())
    paid.unshift((paid[0] ?? 0) + (suiting(options, prices)?.pays ?? Number.POSITIVE_INFINITY));
  return paid;
}

interface Suiting {
  readonly index: number;
  readonly option: Option;
  readonly pays: number;
}

/** What a place takes at these prices, of what there is; undefined where there is nothing left for it. */
function suiting(
  options: readonly Option[],
  prices: readonly number[],
  left?: readonly number[],
): Suiting | undefined {
  let found: Suiting | undefined;
  for (const [index, option] of options.entries()) {
    if (left !== undefined && option.takes.some(([item, count]) => (left[item] ?? 0) < count)) continue;
    const pays = option.takes.reduce((sum, [item, count]) => sum + count * (prices[item] ?? 0), option.cost);
    if (found === undefined || pays < found.pays) found = { index, option, pays };
  }
  return found;
}

/** One place after another takes what suits it at these prices; undefined where that leaves nothing for one. */
function inTurn(places: Places, stock: readonly number[], prices: readonly number[]): Complete | undefined {
  const left = [...stock];
  const options: number[] = [];
  let cost = 0;
  for (const each of places) {
    const found = suiting(each, prices, left);
    if (found === undefined) return undefined;
    for (const [item, count] of found.option.takes) left[item] = (left[item] ?? 0) - count;
    options.push(found.index);
    cost += found.option.cost;
  }
  return { options, cost };
}
