import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Place } from '../../diagnostic/place.ts';
import {
  BAND_NAMES,
  type Band,
  type BandName,
  type LimitFormula,
  type LimitValue,
} from '../../documents/limits/bands.ts';
import type { LimitsInForce } from '../../documents/limits/precedence.ts';
import { evaluateFormula } from '../../formula/evaluate.ts';
import { formatFormula } from '../../formula/format.ts';
import { referencesIn, type UsedReference } from '../../formula/names.ts';
import { type FormulaProblem, isFormulaProblem } from '../../formula/problem.ts';
import { STANDARD_TEMPERATURE, type StatedTemperature } from '../../measurement/temperature.ts';
import { add, type Fraction, fraction, round, toDecimal, ZERO } from '../../quantity/fraction.ts';
import { fromBase, type Quantity, toBase, type Unit, unitsOf } from '../../quantity/units.ts';
import { once } from '../once.ts';
import type { Bands, Side, SidedLimits, SideLimit } from './sideLimit.ts';

/**
 * The means of what a formula names at the position that it limits, at the temperature of its band; undefined where one
 * of them was not measured.
 */
export type MeansAt = (reference: UsedReference, warm: StatedTemperature) => Means | undefined;

/** In the base unit of their quantity. */
export interface Means {
  readonly amounts: readonly Fraction[];
  readonly quantity: Quantity;
}

export interface PositionLimits {
  readonly inForce: LimitsInForce;
  readonly bands: Bands;
  /** Names in formulas that were neither measured here nor are sizes: those limits cannot judge. */
  readonly lacking: readonly string[];
  /** Formulas that come to nothing with what was measured here. */
  readonly failed: readonly FailedLimit[];
  /** The sides of bands that are stated and could not be worked out, as `new max`. */
  readonly open: ReadonlySet<string>;
}

export interface FailedLimit {
  readonly band: BandName;
  readonly side: Side;
  /** The formula with its numbers, and what is wrong with it. */
  readonly written: string;
  readonly problem: FormulaProblem;
  readonly place: Place;
}

/** The nominal size of what is fitted at the position, in the base unit. */
export type NominalAt = (name: string) => Fraction | undefined;

/** The limits of a position as amounts: formulas worked out, lengths rounded once to the base unit. */
export function limitsAt(
  characteristic: Characteristic,
  inForce: LimitsInForce,
  meansAt: MeansAt,
  nominalAt: NominalAt,
): PositionLimits {
  const known = alikeEverywhere.get(inForce);
  if (known !== undefined) return known;
  const limits = limitsHere(characteristic, inForce, meansAt, nominalAt);
  if (!BAND_NAMES.some((name) => hasFormula(inForce.bands[name]))) alikeEverywhere.set(inForce, limits);
  return limits;
}

/** Limits without a formula are worked out once for all positions and sessions that they hold for. */
const alikeEverywhere = new WeakMap<LimitsInForce, PositionLimits>();

const hasFormula = (band: Band | undefined): boolean =>
  band?.min?.kind === 'formula' || band?.max?.kind === 'formula';

function limitsHere(
  characteristic: Characteristic,
  inForce: LimitsInForce,
  meansAt: MeansAt,
  nominalAt: NominalAt,
): PositionLimits {
  const lacking = new Set<string>();
  const failed: FailedLimit[] = [];
  const open = new Set<string>();
  const bands: Partial<Record<BandName, SidedLimits>> = {};
  for (const name of BAND_NAMES) {
    const band = inForce.bands[name];
    const warm = inForce.temperatures[name] ?? STANDARD_TEMPERATURE;
    const around = { characteristic, meansAt, nominalAt, warm, lacking, failed, open };
    const sides = band && sidesOf(band, name, around);
    // A band of which nothing can be worked out is none: it must not make a verdict of ok.
    if (sides?.min !== undefined || sides?.max !== undefined) bands[name] = sides;
  }
  return { inForce, bands, lacking: [...lacking], failed, open };
}

interface LimitContext {
  readonly characteristic: Characteristic;
  readonly meansAt: MeansAt;
  readonly nominalAt: NominalAt;
  readonly warm: StatedTemperature;
  readonly lacking: Set<string>;
  readonly failed: FailedLimit[];
  readonly open: Set<string>;
}

const sidesOf = (band: Band, name: BandName, around: LimitContext): SidedLimits => ({
  min: sideOf(band.min, name, 'min', around),
  max: sideOf(band.max, name, 'max', around),
});

function sideOf(
  value: LimitValue | undefined,
  band: BandName,
  side: Side,
  around: LimitContext,
): SideLimit | undefined {
  if (value === undefined) return undefined;
  const { written, place } = value;
  if (value.kind === 'amount') {
    const amount = settled(value.amount, around.characteristic.quantity);
    return { amount, written, band, place, warm: around.warm };
  }
  const limit = workedOut(value, band, side, around);
  if (limit === undefined) around.open.add(`${band} ${side}`);
  return limit;
}

function workedOut(
  value: LimitFormula,
  band: BandName,
  side: Side,
  around: LimitContext,
): SideLimit | undefined {
  const unit = unitOf(value, around.characteristic.quantity);
  const values = formulaValues(value, around);
  if (unit === undefined || values === undefined) return undefined;
  const result = evaluateFormula(value.formula, values);
  const written = once(() => withNumbers(value, values));
  if (isFormulaProblem(result)) {
    around.failed.push({ band, side, written: written(), problem: result, place: value.place });
    return undefined;
  }
  const amount = settled(add(toBase(result, unit), value.movedBy ?? ZERO), around.characteristic.quantity);
  return {
    amount,
    get written() {
      return written();
    },
    band,
    place: value.place,
    unit,
    warm: around.warm,
  };
}

function withNumbers({ formula }: LimitFormula, values: ReadonlyMap<string, readonly Fraction[]>): string {
  const texts = new Map([...values].map(([text, all]) => [text, all.map(shortDecimal).join(', ')]));
  return formatFormula(formula, texts);
}

const shortDecimal = (amount: Fraction): string => toDecimal(amount, 6).replace(/0{1,4}$/, '');

/** Readings at the position before nominal sizes; undefined, and said so, where a name has neither. */
function formulaValues(
  value: LimitFormula,
  { meansAt, nominalAt, warm, lacking }: LimitContext,
): ReadonlyMap<string, readonly Fraction[]> | undefined {
  const values = new Map<string, readonly Fraction[]>();
  const references = referencesIn(value.formula);
  for (const reference of references) {
    const found = meansAt(reference, warm) ?? nominalOf(reference, nominalAt);
    const unit = found && unitOf(value, found.quantity);
    if (found === undefined || unit === undefined) lacking.add(reference.text);
    else
      values.set(
        reference.text,
        found.amounts.map((amount) => fromBase(amount, unit)),
      );
  }
  return values.size === references.length ? values : undefined;
}

/** A nominal size is that of what is fitted at the position itself, and says nothing of others. */
function nominalOf({ name, at }: UsedReference, nominalAt: NominalAt): Means | undefined {
  const size = at === undefined ? nominalAt(name) : undefined;
  return size && { amounts: [size], quantity: 'length' };
}

function unitOf(value: LimitFormula, quantity: Quantity): Unit | undefined {
  const all = unitsOf(quantity);
  return value.units.get(quantity) ?? (all.length === 1 ? all[0] : undefined);
}

/** What is judged: a length rounded once to a tenth of a nanometre, everything else as it is. */
export const settled = (amount: Fraction, quantity: Quantity): Fraction =>
  quantity === 'length' && amount.d !== 1n ? fraction(round(amount)) : amount;
