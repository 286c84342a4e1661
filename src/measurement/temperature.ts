import {
  absolute,
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  multiply,
  subtract,
  toNumber,
  ZERO,
} from '../quantity/fraction.ts';
import type { Expansion } from './expansion.ts';
import { addValues, type ErrorTerm, lateValue, type Value } from './value.ts';

/** A temperature in degC, and as a person wrote it: `70 degF`. */
export interface StatedTemperature {
  readonly amount: Fraction;
  readonly text: string;
}

/** The temperature that sizes are stated at where nothing else is said (ISO 1). */
export const STANDARD_TEMPERATURE: StatedTemperature = { amount: fraction(20), text: '20 degC' };

export const isSameTemperature = (a: StatedTemperature, b: StatedTemperature): boolean =>
  compare(a.amount, b.amount) === 0;

/** How well a workshop knows the temperature of what it measures, in degC: our judgement, no source. */
export const TEMPERATURE_ERROR = fraction(1);

/** A part and the gauge that measured it, both at one temperature, and the temperature that they are taken to. */
export interface Warmth {
  readonly from: StatedTemperature;
  readonly to: StatedTemperature;
  /** Names the temperature: readings that share it share its error. */
  readonly id: string;
  readonly part: Expansion & { readonly id: string };
  /** Undefined for a gauge that does not expand. */
  readonly gauge: (Expansion & { readonly id: string }) | undefined;
}

/**
 * Whether the coefficients differ by more than what both may be off by. Where they do not, a steel shaft in
 * a steel micrometer, part and gauge grow alike: no correction can be told from nought, and the reading
 * stands as it was written, with the uncertainty of their difference.
 */
export function expandUnlike({ part, gauge }: Pick<Warmth, 'part' | 'gauge'>): boolean {
  if (gauge === undefined) return true;
  const apart = absolute(subtract(part.coefficient, gauge.coefficient));
  return compare(apart, add(part.halfWidth, gauge.halfWidth)) > 0;
}

/** Whether a reading is another number at the temperature that it is taken to. */
export const isMoved = (warmth: Warmth): boolean =>
  expandUnlike(warmth) && !isSameTemperature(warmth.from, warmth.to);

/**
 * What is added to a reading to make it what the gauge would read at another temperature, to first order:
 * (α_gauge − α_part) · ΔT · length. At 20 °C that is the size itself, since scales are true there.
 */
export const correction = (amount: Fraction, warmth: Warmth): Fraction => multiply(shareOf(warmth), amount);

function shareOf(warmth: Warmth): Fraction {
  if (!isMoved(warmth)) return ZERO;
  const { part, gauge, from, to } = warmth;
  const apart = subtract(gauge?.coefficient ?? ZERO, part.coefficient);
  return multiply(apart, subtract(from.amount, to.amount));
}

/** How much of an amount is the correction that is in it. */
export function correctionIn(taken: Fraction, warmth: Warmth): Fraction {
  const share = shareOf(warmth);
  return multiply(taken, divide(share, add(ONE, share)));
}

const ONE = fraction(1);

/**
 * A reading taken to another temperature, with what the temperature and the coefficients leave open. Each has a
 * name, so what two readings share cancels in their difference.
 */
export const takenToTemperature = (value: Value, warmth: Warmth): Value =>
  addValues(
    value,
    lateValue(correction(value.amount, warmth), () => temperatureTerms(value.amount, warmth)),
  );

/** The size of a part at another temperature, from that at 20 °C: no gauge grows with it. */
export const grown = (value: Value, part: Warmth['part'], to: StatedTemperature): Value => {
  const warmer = subtract(to.amount, STANDARD_TEMPERATURE.amount);
  const share = multiply(part.coefficient, warmer);
  const off = toNumber(multiply(multiply(part.halfWidth, warmer), value.amount));
  const growth = lateValue(multiply(share, value.amount), () => new Map([expansionTerm(part, off)]));
  return addValues(value, growth);
};

const expansionTerm = ({ id }: Warmth['part'], off: number): readonly [string, ErrorTerm] => [
  `expansion of ${id}`,
  rectangular(off),
];

function temperatureTerms(
  amount: Fraction,
  { part, gauge, from, to, id }: Warmth,
): ReadonlyMap<string, ErrorTerm> {
  const length = toNumber(amount);
  const warmer = toNumber(subtract(from.amount, to.amount));
  const apart = expandUnlike({ part, gauge })
    ? toNumber(subtract(gauge?.coefficient ?? ZERO, part.coefficient))
    : 0;
  const grownBy = (of: Expansion): number => toNumber(of.halfWidth) * warmer * length;
  return new Map([
    [id, rectangular(apart * length * toNumber(TEMPERATURE_ERROR))],
    expansionTerm(part, -grownBy(part)),
    ...(gauge === undefined ? [] : [expansionTerm(gauge, grownBy(gauge))]),
  ]);
}

/** Of half the width of a rectangular distribution (JCGM 100:2008, 4.3.7). */
const rectangular = (half: number): ErrorTerm => ({ u: half / Math.sqrt(3), dof: Number.POSITIVE_INFINITY });
