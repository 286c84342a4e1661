import { capByCap, centreOut } from './centreOut.ts';
import { crosswise } from './crosswise.ts';
import { type Layout, MOST_FASTENERS, type Position } from './layouts.ts';

/** Said beside every order that was not written down by the engine's maker. */
export const GENERATED_NOTE = "generated: the maker's order wins";

/**
 * Names in the order to tighten them: caps one by one, a circle crosswise, a row and a head from the centre
 * outwards. RangeError for more than 200 fasteners.
 */
export function generateOrder(kind: Layout['kind'], positions: readonly Position[]): readonly string[] {
  if (positions.length > MOST_FASTENERS) {
    throw new RangeError(`${positions.length} fasteners are more than ${MOST_FASTENERS}`);
  }
  return WAYS[kind](positions).map(({ name }) => name);
}

const WAYS: Readonly<Record<Layout['kind'], (positions: readonly Position[]) => readonly Position[]>> = {
  row: centreOut,
  caps: capByCap,
  head: centreOut,
  circle: crosswise,
};

/** What is wrong with the numbers written beside the fasteners, or the order they give. */
export type OrderOfNumbers = { readonly order: readonly string[] } | { readonly problem: string };

/** The order from numbers as manuals draw them: each fastener's place in the sequence, counted from 1. */
export function orderOfNumbers(numbers: ReadonlyMap<string, number>): OrderOfNumbers {
  const sorted = [...numbers].sort(([, a], [, b]) => a - b);
  const wrong = sorted.find(([, number], index) => number !== index + 1);
  if (wrong !== undefined) {
    return { problem: `the numbers must run from 1 to ${numbers.size}; ${wrong[0]} has ${wrong[1]}` };
  }
  return { order: sorted.map(([name]) => name) };
}

/** Each fastener's place in the order, counted from 1. */
export const numbersOfOrder = (order: readonly string[]): ReadonlyMap<string, number> =>
  new Map(order.map((name, index) => [name, index + 1]));
