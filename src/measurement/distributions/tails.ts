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
  let place: Place = { u: 0, share: distribution.tails(1)[side] };
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = newtonStep(distribution, side, wanted[side], place);
    // Rounding makes the last steps wander by a few units of the last place.
    if (Math.abs(next.u - place.u) <= 4 * Number.EPSILON) return Math.exp(next.u);
    place = next;
  }
  return Math.exp(place.u);
}

const MOST_STEPS = 500;

/** The logarithm of a value, and the share of the distribution that lies to the chosen side of it, never zero. */
interface Place {
  readonly u: number;
  readonly share: number;
}

function newtonStep(
  { tails, density }: PositiveDistribution,
  side: keyof Tails,
  wanted: number,
  from: Place,
): Place {
  const value = Math.exp(from.u);
  const gap = (logRatio(from.share, wanted) * from.share) / (value * density(value));
  let u = from.u + (side === 'above' ? gap : -gap);
  let share = tails(Math.exp(u))[side];
  // Where the share is too small for a double there is no slope to follow: come back halfway, until nothing is left.
  for (let halvings = 0; share === 0 && halvings < 60; halvings++) {
    u = (from.u + u) / 2;
    share = tails(Math.exp(u))[side];
  }
  return share === 0 ? from : { u, share };
}

/** The logarithm of a / b: of the quotient, which keeps the digits near one, unless it overflows. */
function logRatio(a: number, b: number): number {
  const ratio = a / b;
  return Number.isFinite(ratio) ? Math.log(ratio) : Math.log(a) - Math.log(b);
}
