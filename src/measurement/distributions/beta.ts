import { swapTails, type Tails } from './tails.ts';

/**
 * The regularized incomplete beta function at `x`, and one minus it: I_x(a, b) and I_y(b, a).
 * `y` is 1 − x as the caller knows it, with the digits that a subtraction here would lose. a, b > 0 and finite.
 * Continued fraction of DLMF 8.17.22.
 */
export function incompleteBeta(x: number, y: number, a: number, b: number): Tails {
  // The fraction converges fast below this point; above it the mirrored one does.
  if (x > (a + 1) / (a + b + 2)) return swapTails(incompleteBeta(y, x, b, a));
  const below = (betaPower(x, y, a, b) / a) * continuedFraction(x, a, b);
  return { below, above: 1 - below };
}

/**
 * x^a · y^b / B(a, b), from the binomial form of C. Loader, "Fast and Accurate Computation of Binomial
 * Probabilities" (2000; from memory): no large terms that cancel, so it keeps its digits for millions of degrees
 * of freedom, where a difference of log-gammas keeps eight.
 */
export function betaPower(x: number, y: number, a: number, b: number): number {
  const n = a + b;
  const stirling = stirlingError(n) - stirlingError(a) - stirlingError(b);
  const deviance = devianceTerm(a, n * x) + devianceTerm(b, n * y);
  return Math.sqrt(((a / n) * b) / (2 * Math.PI)) * Math.exp(stirling - deviance);
}

/** ln Γ(z) less Stirling's formula for it, z > 0: a series for large z, a recurrence down to it. */
function stirlingError(z: number): number {
  if (z < 10) return stirlingError(z + 1) + (z + 0.5) * Math.log1p(1 / z) - 1;
  const square = 1 / (z * z);
  const tail = 1 / 1260 - square * (1 / 1680 - square * (1 / 1188 - (square * 691) / 360360));
  return (1 / 12 - square * (1 / 360 - square * tail)) / z;
}

/** value · ln(value / expected) + expected − value, which is tiny where the two are near each other. */
function devianceTerm(value: number, expected: number): number {
  const difference = value - expected;
  if (Math.abs(difference) > 0.1 * (value + expected)) {
    return value * Math.log(value / expected) - difference;
  }
  const v = difference / (value + expected);
  let sum = difference * v;
  let power = 2 * value * v;
  for (let odd = 3; odd < 60; odd += 2) {
    power *= v * v;
    sum += power / odd;
  }
  return sum;
}

const MOST_TERMS = 20_000;
/** Stands for a denominator of zero in Lentz's method. */
const TINY = 1e-300;

/** Modified Lentz evaluation. About √max(a, b) terms are needed. */
function continuedFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let result = d;
  for (let m = 1; m < MOST_TERMS; m++) {
    for (const term of termPair(m, x, a, b)) {
      d = 1 / awayFromZero(1 + term * d);
      c = awayFromZero(1 + term / c);
      result *= c * d;
    }
    if (Math.abs(c * d - 1) <= Number.EPSILON) return result;
  }
  throw new RangeError(`no convergence of the incomplete beta function at x = ${x}, a = ${a}, b = ${b}`);
}

function termPair(m: number, x: number, a: number, b: number): readonly [number, number] {
  const at = a + 2 * m;
  const even = (m * (b - m) * x) / ((at - 1) * at);
  const odd = (-(a + m) * (a + b + m) * x) / (at * (at + 1));
  return [even, odd];
}

const awayFromZero = (value: number): number => (Math.abs(value) < TINY ? TINY : value);
