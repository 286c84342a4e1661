import {
  absolute,
  add,
  compare,
  type Fraction,
  fraction,
  multiply,
  subtract,
  toNumber,
} from '../quantity/fraction.ts';
import type { Expansion } from './expansion.ts';
import { addValues, type ErrorTerm, lateValue, type Value } from './value.ts';

/** The temperature that sizes are stated at (ISO 1). */
const REFERENCE = fraction(20);
/** How well a workshop knows the temperature of what it measures, in degC: our judgement, no source. */
export const TEMPERATURE_ERROR = fraction(1);

/** A part and the gauge that measured it, both at one temperature. */
export interface Warmth {
  /** In degC. */
  readonly temperature: Fraction;
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

/** What is added to a reading to make it the size at 20 °C, to first order: (α_gauge − α_part) · ΔT · length. */
export function correction(amount: Fraction, warmth: Warmth): Fraction {
  if (!expandUnlike(warmth)) return fraction(0);
  const { part, gauge, temperature } = warmth;
  const apart = subtract(gauge?.coefficient ?? fraction(0), part.coefficient);
  return multiply(multiply(apart, subtract(temperature, REFERENCE)), amount);
}

/**
 * A size at 20 °C from a reading at another temperature, with what the temperature and the coefficients
 * leave open. Each has a name, so what two readings share cancels in their difference.
 */
export const atReferenceTemperature = (value: Value, warmth: Warmth): Value =>
  addValues(
    value,
    lateValue(correction(value.amount, warmth), () => temperatureTerms(value.amount, warmth)),
  );

function temperatureTerms(
  amount: Fraction,
  { part, gauge, temperature, id }: Warmth,
): ReadonlyMap<string, ErrorTerm> {
  const length = toNumber(amount);
  const warmer = toNumber(subtract(temperature, REFERENCE));
  const apart = expandUnlike({ part, gauge })
    ? toNumber(gauge?.coefficient ?? fraction(0)) - toNumber(part.coefficient)
    : 0;
  const terms = new Map<string, ErrorTerm>();
  const put = (source: string, half: number): void => {
    if (half !== 0) terms.set(source, { u: half / Math.sqrt(3), dof: Number.POSITIVE_INFINITY });
  };
  put(id, apart * length * toNumber(TEMPERATURE_ERROR));
  put(`expansion of ${part.id}`, -toNumber(part.halfWidth) * warmer * length);
  if (gauge !== undefined) {
    put(`expansion of ${gauge.id}`, toNumber(gauge.halfWidth) * warmer * length);
  }
  return terms;
}
