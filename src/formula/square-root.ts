import { type Fraction, fraction } from '../quantity/fraction.ts';

/** More than the fifteen digits promised, so that sums of roots keep fifteen as well. */
const DIGITS = 30;

/**
 * The square root: exact where the fraction is a perfect square, else to 30 significant digits (nearest).
 * The caller has checked that the value is not negative.
 */
export function squareRoot(value: Fraction): Fraction {
  // n/d = n·d/d², so the root is rational exactly when n·d is a square; lowest terms are not needed.
  const product = value.n * value.d;
  const root = wholeRoot(product);
  return root * root === product ? fraction(root, value.d) : decimalRoot(value);
}

function decimalRoot(value: Fraction): Fraction {
  const wholeDigits = (digitCount(value.n) - digitCount(value.d)) / 2;
  const places = BigInt(Math.max(0, DIGITS - Math.floor(wholeDigits)));
  // The root of four times the square is twice the root: its last bit says which way to round.
  const doubled = wholeRoot((4n * value.n * 100n ** places) / value.d);
  return fraction((doubled + 1n) / 2n, 10n ** places);
}

/** The greatest whole number whose square is at most `square`, by Newton's method from above. */
function wholeRoot(square: bigint): bigint {
  if (square === 0n) return 0n;
  let root = atLeastRoot(square);
  for (;;) {
    const next = (root + square / root) / 2n;
    if (next >= root) return root;
    root = next;
  }
}

/** A start no less than the root, from its twelve leading digits: half of the steps are saved. Fewer are filled up. */
function atLeastRoot(square: bigint): bigint {
  const dropped = 4 * (Math.floor(square.toString(16).length / 2) - 6);
  const leading = Number(square >> BigInt(2 * dropped));
  return (BigInt(Math.floor(Math.sqrt(leading))) + 1n) << BigInt(dropped);
}

const digitCount = (value: bigint): number => value.toString().length;
