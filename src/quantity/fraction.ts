/**
 * An exact rational number. Readings, unit factors, sums and means stay exact until they are judged,
 * so a reading that stands on its limit is never pushed over it by binary rounding.
 * The denominator is positive; the pair need not be in lowest terms (reducing costs more than it saves).
 */
export interface Fraction {
  readonly n: bigint;
  readonly d: bigint;
}

export const ZERO: Fraction = { n: 0n, d: 1n };

export const fraction = (n: bigint | number, d: bigint | number = 1n): Fraction => {
  const top = BigInt(n);
  const bottom = BigInt(d);
  if (bottom > 0n) return { n: top, d: bottom };
  if (bottom < 0n) return { n: -top, d: -bottom };
  throw new RangeError('a fraction cannot have a denominator of zero');
};

/** The exact value of decimal text such as `0.0020`, `+7` or `.5`. The caller has checked the form. */
export function parseDecimal(text: string): Fraction {
  const point = text.indexOf('.');
  const places = point < 0 ? 0 : text.length - point - 1;
  const digits = text.replace('.', '').replace(/^\+/, '');
  return { n: BigInt(digits), d: 10n ** BigInt(places) };
}

export const add = (a: Fraction, b: Fraction): Fraction =>
  a.d === b.d ? { n: a.n + b.n, d: a.d } : { n: a.n * b.d + b.n * a.d, d: a.d * b.d };

export const negate = (a: Fraction): Fraction => ({ n: -a.n, d: a.d });

export const subtract = (a: Fraction, b: Fraction): Fraction =>
  a.d === b.d ? { n: a.n - b.n, d: a.d } : { n: a.n * b.d - b.n * a.d, d: a.d * b.d };

export const multiply = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.n, d: a.d * b.d });

export const divide = (a: Fraction, b: Fraction): Fraction => fraction(a.n * b.d, a.d * b.n);

export const absolute = (a: Fraction): Fraction => (a.n < 0n ? negate(a) : a);

/** -1 when a < b, 0 when equal, 1 when a > b. Whole numbers are compared as they stand, and most lengths are. */
export const compare = (a: Fraction, b: Fraction): number =>
  a.d === b.d ? inOrder(a.n, b.n) : inOrder(a.n * b.d, b.n * a.d);

const inOrder = (left: bigint, right: bigint): number => (left < right ? -1 : left > right ? 1 : 0);

export const equals = (a: Fraction, b: Fraction): boolean => compare(a, b) === 0;

export const least = (values: readonly Fraction[]): Fraction => pick(values, (a, b) => compare(a, b) < 0);

export const greatest = (values: readonly Fraction[]): Fraction => pick(values, (a, b) => compare(a, b) > 0);

export const sum = (values: readonly Fraction[]): Fraction => values.reduce(add, ZERO);

export const mean = (values: readonly Fraction[]): Fraction => divide(sum(values), fraction(values.length));

/** The nearest whole number; a half goes away from zero, as on paper. */
export function round(a: Fraction): bigint {
  // Division cuts towards zero, so that a half left over has the sign of the whole.
  const halves = (2n * a.n) / a.d;
  return (halves + (halves % 2n)) / 2n;
}

/** The nearest double. Where either part is past 2^1024 and has no double, their quotient is scaled first. */
export function toNumber(a: Fraction): number {
  const [top, bottom] = [Number(a.n), Number(a.d)];
  if (Number.isFinite(top) && Number.isFinite(bottom)) return top / bottom;
  const shift = bitsOf(a.d) - bitsOf(a.n) + KEPT_BITS;
  // A shift below zero goes to the right.
  const scaled = (a.n << BigInt(shift)) / a.d;
  // In two steps, since 2^shift may itself be past the range of a double.
  const half = Math.trunc(shift / 2);
  return Number(scaled) / 2 ** half / 2 ** (shift - half);
}

/** More than a double keeps. */
const KEPT_BITS = 64;

/** As many, or a few more: a sign counts as a digit. */
const bitsOf = (value: bigint): number => value.toString(16).length * 4;

/** Decimal text with exactly `places` decimals, rounded half away from zero. */
export function toDecimal(a: Fraction, places: number): string {
  const scaled = round({ n: a.n * 10n ** BigInt(places), d: a.d }).toString();
  const sign = scaled.startsWith('-') ? '-' : '';
  const digits = scaled.slice(sign.length).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  return places === 0 ? `${sign}${whole}` : `${sign}${whole}.${digits.slice(-places)}`;
}

function pick(values: readonly Fraction[], better: (a: Fraction, b: Fraction) => boolean): Fraction {
  const [first, ...rest] = values;
  if (first === undefined) throw new RangeError('no values to choose from');
  return rest.reduce((best, value) => (better(value, best) ? value : best), first);
}
