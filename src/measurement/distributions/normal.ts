import { positiveQuantile, type Tails } from './tails.ts';

/** The probability that a standard normal variable is at most `z`; a lower tail keeps its digits. */
export function normalCdf(z: number): number {
  const upper = absoluteTails(Math.abs(z)).above / 2;
  return z < 0 ? upper : 1 - upper;
}

/** The z below which a standard normal variable lies with probability `p`, 0 ≤ p ≤ 1. */
export function normalQuantile(p: number): number {
  requireProbability(p);
  const tail = Math.min(p, 1 - p);
  const size = positiveQuantile(absoluteNormal, { below: 1 - 2 * tail, above: 2 * tail });
  return p < 0.5 ? -size : size;
}

export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Throws a RangeError for what is no probability: the caller's slip, not a fault of the readings. */
export function requireProbability(p: number): void {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`a probability lies between 0 and 1, not at ${p}`);
}

/** The size of a standard normal variable, its sign left out. */
const absoluteNormal = {
  tails: absoluteTails,
  density: (size: number): number => 2 * normalDensity(size),
};

function absoluteTails(size: number): Tails {
  if (size > SERIES_UP_TO) {
    const above = 2 * farTail(size);
    return { below: 1 - above, above };
  }
  const below = 2 * centralShare(size);
  return { below, above: 1 - below };
}

/** Below it the series is short and exact enough, above it the continued fraction converges fast. */
const SERIES_UP_TO = 2;

/** Φ(z) − 1/2 as φ(z) · (z + z³/3 + z⁵/(3·5) + …), Abramowitz & Stegun 26.2.11 (from memory). */
function centralShare(z: number): number {
  let term = z;
  let sum = 0;
  for (let odd = 3; sum + term > sum; odd += 2) {
    sum += term;
    term *= (z * z) / odd;
  }
  return normalDensity(z) * sum;
}

/** φ(z) / (z + 1/(z + 2/(z + 3/(z + …)))), Abramowitz & Stegun 26.2.14 (from memory), from the inside out. */
function farTail(z: number): number {
  let denominator = z;
  for (let depth = 150; depth > 0; depth--) denominator = z + depth / denominator;
  return normalDensity(z) / denominator;
}
