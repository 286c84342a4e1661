import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Engine } from '../documents/assemble.ts';
import { BAND_NAMES, type Band, type BandName, type LimitValue } from '../documents/limits.ts';
import type { LimitsInForce } from '../documents/precedence.ts';
import { evaluateFormula } from '../formula/evaluate.ts';
import { formatFormula } from '../formula/format.ts';
import { namesIn } from '../formula/names.ts';
import { isFormulaProblem } from '../formula/problem.ts';
import { type Fraction, fraction, round, toDecimal } from '../quantity/fraction.ts';
import { fromBase, type Quantity, toBase, type Unit, unitsOf } from '../quantity/units.ts';
import type { Bands, SidedLimits, SideLimit } from './verdict.ts';

/** The mean of what was measured of another characteristic at the same position, in its base unit. */
export type MeanAt = (id: string) => { readonly amount: Fraction; readonly quantity: Quantity } | undefined;

export interface PositionLimits {
  readonly inForce: LimitsInForce;
  readonly bands: Bands;
  /** Names in formulas that were neither measured here nor are sizes: those limits cannot judge. */
  readonly lacking: readonly string[];
}

/** The limits of a position as amounts: formulas worked out, lengths rounded once to the base unit. */
export function limitsAt(
  engine: Engine,
  characteristic: Characteristic,
  inForce: LimitsInForce,
  meanAt: MeanAt,
): PositionLimits {
  const lacking = new Set<string>();
  const bands: Partial<Record<BandName, SidedLimits>> = {};
  for (const name of BAND_NAMES) {
    const band = inForce.bands[name];
    const sides = band && sidesOf(band, name, { engine, characteristic, meanAt, lacking });
    // A band of which nothing can be worked out is none: it must not make a verdict of ok.
    if (sides?.min !== undefined || sides?.max !== undefined) bands[name] = sides;
  }
  return { inForce, bands, lacking: [...lacking] };
}

interface Surroundings {
  readonly engine: Engine;
  readonly characteristic: Characteristic;
  readonly meanAt: MeanAt;
  readonly lacking: Set<string>;
}

const sidesOf = (band: Band, name: BandName, around: Surroundings): SidedLimits => ({
  min: sideOf(band.min, name, around),
  max: sideOf(band.max, name, around),
});

function sideOf(value: LimitValue | undefined, band: BandName, around: Surroundings): SideLimit | undefined {
  if (value === undefined) return undefined;
  const { written, place } = value;
  if (value.kind === 'amount') {
    return { amount: settled(value.amount, around.characteristic.quantity), written, band, place };
  }
  const unit = unitOf(value, around.characteristic.quantity);
  const values = formulaValues(value, around);
  if (unit === undefined || values === undefined) return undefined;
  const result = evaluateFormula(value.formula, values);
  if (isFormulaProblem(result)) return undefined;
  const texts = new Map([...values].map(([name, amount]) => [name, shortDecimal(amount)]));
  return {
    amount: settled(toBase(result, unit), around.characteristic.quantity),
    written: formatFormula(value.formula, texts),
    band,
    place,
  };
}

const shortDecimal = (amount: Fraction): string => toDecimal(amount, 6).replace(/0{1,4}$/, '');

/** Readings at the position before nominal sizes; undefined, and said so, where a name has neither. */
function formulaValues(
  value: LimitValue & { kind: 'formula' },
  { engine, meanAt, lacking }: Surroundings,
): ReadonlyMap<string, Fraction> | undefined {
  const values = new Map<string, Fraction>();
  const names = namesIn(value.formula);
  for (const name of names) {
    const mean = meanAt(name);
    const size = engine.document.sizes.get(name)?.amount;
    const found = mean ?? (size === undefined ? undefined : { amount: size, quantity: 'length' as const });
    const unit = found && unitOf(value, found.quantity);
    if (found === undefined || unit === undefined) lacking.add(name);
    else values.set(name, fromBase(found.amount, unit));
  }
  return values.size === names.length ? values : undefined;
}

function unitOf(value: LimitValue & { kind: 'formula' }, quantity: Quantity): Unit | undefined {
  const all = unitsOf(quantity);
  return value.units.get(quantity) ?? (all.length === 1 ? all[0] : undefined);
}

/** What is judged: a length rounded once to a tenth of a nanometre, everything else as it is. */
export const settled = (amount: Fraction, quantity: Quantity): Fraction =>
  quantity === 'length' && amount.d !== 1n ? fraction(round(amount)) : amount;
