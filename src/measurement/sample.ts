/**
 * The mean of at least one value. A second pass takes back what the first one rounded away, so that readings
 * alike in their first digits (10000000.1, 10000000.3) keep the last.
 */
export function mean(values: readonly number[]): number {
  requireValues(values, 1);
  const first = sum(values) / values.length;
  return first + sum(values.map((value) => value - first)) / values.length;
}

/** The experimental standard deviation (n − 1) of at least two values. */
export function standardDeviation(values: readonly number[]): number {
  requireValues(values, 2);
  return Math.sqrt(squaresAboutMean(values) / (values.length - 1));
}

export const squaresAboutMean = (values: readonly number[]): number =>
  sumOfSquares(differences(values, mean(values)));

/** The middle value of at least one, or halfway between the middle two. */
export function median(values: readonly number[]): number {
  requireValues(values, 1);
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
  const lower = sorted[Math.ceil(sorted.length / 2) - 1] ?? Number.NaN;
  return (lower + upper) / 2;
}

/** The median distance from the median, unscaled. Times 1.4826 it estimates the deviation of normal readings. */
export const medianAbsoluteDeviation = (values: readonly number[]): number =>
  median(differences(values, median(values)).map(Math.abs));

/** Greatest less least of at least one value. */
export function range(values: readonly number[]): number {
  requireValues(values, 1);
  return values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b));
}

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

export const sumOfSquares = (values: readonly number[]): number => sum(values.map((value) => value ** 2));

const differences = (values: readonly number[], from: number): number[] =>
  values.map((value) => value - from);

function requireValues(values: readonly number[], least: number): void {
  if (values.length < least)
    throw new RangeError(`at least ${least} values are needed, not ${values.length}`);
}
