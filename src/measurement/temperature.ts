import {
  absolute,
  add,
  compare,
  type Fraction,
  fraction,
  multiply,
  parseDecimal,
  subtract,
  toNumber,
} from '../quantity/fraction.ts';
import { addValues, type ErrorTerm, lateValue, type Value } from './value.ts';

/** A material's expansion for each degree Celsius. */
export interface Expansion {
  readonly material: string;
  readonly coefficient: Fraction;
  readonly source: string;
}

const expansion = (material: string, millionths: string, source: string): Expansion => ({
  material,
  coefficient: multiply(parseDecimal(millionths), fraction(1, 1_000_000)),
  source,
});

const HANDBOOK = 'Callister, appendix B.6';
const NIST = 'Swyt, J. Res. NIST 99:31';

const STEEL = expansion('steel', '11.5', NIST);

/** Near room temperature. Alloys of one name differ, which is what the share of uncertainty below is for. */
const MATERIALS: readonly (readonly [RegExp, Expansion])[] = [
  [/\bsteel\b/, STEEL],
  [/\b(?:ductile|nodular)\b/, expansion('ductile iron', '11.2', HANDBOOK)],
  [/^(?!.*(?:ductile|nodular)).*\biron\b/, expansion('cast iron', '11.4', HANDBOOK)],
  [/\balumini?um\b/, expansion('aluminium', '23', NIST)],
  [/\bbronze\b/, expansion('bronze', '18', HANDBOOK)],
];

/** By its words as written, `forged steel`; undefined for what is not known, and for two materials at once. */
export function expansionOf(written: string): Expansion | undefined {
  const found = MATERIALS.filter(([words]) => words.test(written.toLowerCase()));
  return found.length === 1 ? found[0]?.[1] : undefined;
}

/** What a gauge is made of where nothing is said. */
export const GAUGE_STEEL = STEEL;

/** The temperature that sizes are stated at (ISO 1). */
const REFERENCE = fraction(20);
/** Of a coefficient from a handbook: our judgement, no source. */
export const COEFFICIENT_SHARE = fraction(1, 10);
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
 * Whether the coefficients differ by more than a tenth of both allows. Where they do not, a steel shaft in
 * a steel micrometer, part and gauge grow alike: no correction can be told from nought, and the reading
 * stands as it was written, with the uncertainty of their difference.
 */
export function expandUnlike({ part, gauge }: Pick<Warmth, 'part' | 'gauge'>): boolean {
  if (gauge === undefined) return true;
  const apart = absolute(subtract(part.coefficient, gauge.coefficient));
  return compare(apart, multiply(COEFFICIENT_SHARE, add(part.coefficient, gauge.coefficient))) > 0;
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
  const share = toNumber(COEFFICIENT_SHARE);
  put(id, apart * length * toNumber(TEMPERATURE_ERROR));
  put(`expansion of ${part.id}`, -share * toNumber(part.coefficient) * warmer * length);
  if (gauge !== undefined) {
    put(`expansion of ${gauge.id}`, share * toNumber(gauge.coefficient) * warmer * length);
  }
  return terms;
}
