/**
 * What lies below and above a point of a distribution, each computed by itself:
 * one minus the other would lose the digits of a small tail.
 */
export interface Tails {
  readonly below: number;
  readonly above: number;
}

export const swapTails = ({ below, above }: Tails): Tails => ({ below: above, above: below });

/** A distribution on the positive axis, described where the logarithm of its variable is `u`. */
export interface PositiveDistribution {
  readonly tails: (value: number) => Tails;
  readonly density: (value: number) => number;
}

/**
 * The value that leaves the given shares below and above it (two numbers that sum to one).
 * Newton's method on the logarithm of the smaller share against the logarithm of the value: for the
 * distributions used here that curve is concave, so the steps close in from one side without overshooting again.
 */
export function positiveQuantile(distribution: PositiveDistribution, wanted: Tails): number {
  if (wanted.below <= 0) return 0;
  if (wanted.above <= 0) return Number.POSITIVE_INFINITY;
  const side = wanted.below < wanted.above ? 'below' : 'above';
  let u = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = newtonStep(distribution, side, wanted[side], u);
    // Rounding makes the last steps wander by a few units of the last place.
    if (Math.abs(next - u) <= 4 * Number.EPSILON) return Math.exp(next);
    u = next;
  }
  return Math.exp(u);
}

const MOST_STEPS = 500;
/** One step multiplies the value by at most e³, so that a flat start cannot throw it out of range. */
const LONGEST_STEP = 3;

function newtonStep(distribution: PositiveDistribution, side: keyof Tails, share: number, u: number): number {
  const value = Math.exp(u);
  const reached = distribution.tails(value)[side];
  // A share too small for a double says only on which side of the answer we are.
  if (reached === 0) return side === 'above' ? u - 0.5 : u + 0.5;
  const slope = (value * distribution.density(value)) / reached;
  const gap = Math.log(reached / share) / slope;
  const change = side === 'above' ? gap : -gap;
  return u + Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, change));
}
