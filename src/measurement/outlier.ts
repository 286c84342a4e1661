/**
 * Dixon's ratio of the gap beside the outermost of n readings to their whole range, exceeded by chance once in
 * a hundred samples of a normal distribution, either end counted (Dixon and Dean 1951, revised by Rorabacher
 * 1991; from memory, and seen again in simulation).
 */
const CRITICAL: Readonly<Record<number, number>> = {
  4: 0.926,
  5: 0.821,
  6: 0.74,
  7: 0.68,
  8: 0.634,
  9: 0.598,
  10: 0.568,
};

export interface Outlier {
  readonly index: number;
  /** Index of its nearest neighbour, and how far apart they are. */
  readonly neighbour: number;
  readonly gap: number;
}

/** The one of four or more amounts that stands apart from the rest, or undefined. Past ten, the ratio for ten serves. */
export function outlierOf(amounts: readonly number[]): Outlier | undefined {
  const critical = CRITICAL[Math.min(10, amounts.length)] ?? Number.POSITIVE_INFINITY;
  const order = amounts.map((_, index) => index).sort((a, b) => at(amounts, a) - at(amounts, b));
  const range = at(amounts, order.at(-1)) - at(amounts, order[0]);
  const ends = [
    [order[0], order[1]],
    [order.at(-1), order.at(-2)],
  ].map(([index = Number.NaN, neighbour = Number.NaN]) => ({
    index,
    neighbour,
    gap: Math.abs(at(amounts, index) - at(amounts, neighbour)),
  }));
  // Of readings that are all alike the ratio is no number, and exceeds nothing.
  return ends.find(({ gap }) => gap / range > critical);
}

const at = (amounts: readonly number[], index = Number.NaN): number => amounts[index] ?? Number.NaN;
