import {
  absolute,
  add,
  compare,
  type Fraction,
  fraction,
  subtract,
  toDecimal,
} from '../../quantity/fraction.ts';

/** What is known of a reading before it is typed. Amounts are numbers of the unit in which it will be typed. */
export interface Expectation {
  /** The previous reading of its kind, else the nominal size, else the middle of a band. */
  readonly reference: Fraction;
  /** Decimals that the instrument shows. */
  readonly decimals: number;
  /** The narrowest band with two sides. */
  readonly bandWidth: Fraction | undefined;
}

/** So far from the reference, in band widths, a reading is believed when only its last digits were typed. */
const BELIEVED = 10n;

/**
 * The whole number that was meant by its last digits: those of the reference are replaced, one step down and up as
 * well. Undefined unless exactly one of the three lies within ten band widths of the reference: a guess that could be
 * wrong is worse than asking.
 */
export function completeDigits(typed: string, expected: Expectation): string | undefined {
  const { reference, decimals, bandWidth } = expected;
  if (!/^\d{1,3}$/.test(typed) || typed.length >= decimals + 1 || bandWidth === undefined) return undefined;
  const unit = 10n ** BigInt(decimals);
  const step = 10n ** BigInt(typed.length);
  const inSteps = toDecimal({ n: reference.n * unit, d: reference.d }, 0);
  const whole = BigInt(inSteps) - mod(BigInt(inSteps), step);
  const window = fraction(bandWidth.n * BELIEVED, bandWidth.d);
  const candidates = [-step, 0n, step]
    .map((shift) => add(fraction(whole + shift, unit), fraction(BigInt(typed), unit)))
    .filter((each) => compare(absolute(subtract(each, reference)), window) <= 0);
  const [only, second] = candidates;
  return only === undefined || second !== undefined ? undefined : toDecimal(only, decimals);
}

const mod = (a: bigint, by: bigint): bigint => ((a % by) + by) % by;
