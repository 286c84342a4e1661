import {
  absolute,
  compare,
  divide,
  type Fraction,
  fraction,
  multiply,
  parseDecimal,
  toDecimal,
  toNumber,
} from './fraction.ts';
import { fromBase, type Unit, unitNamed } from './units.ts';

/** How many decimals show one step of this size in this unit, as far as decimals can. */
export function decimalsFor(step: Fraction, unit: Unit): number {
  if (step.n === 0n) return 0;
  const inUnit = divide(step, unit.factor);
  let decimals = 0;
  while (decimals < MOST_DECIMALS && compare(multiply(inUnit, fraction(10n ** BigInt(decimals))), ONE) < 0)
    decimals += 1;
  return decimals;
}

/** To a tenth of a thou, or a micrometre: what parts that are chosen by size are measured to. */
export const fineDecimals = (unit: Unit): number =>
  decimalsFor(unit.name === 'mm' ? MICROMETRE : TENTH, unit);

const ONE = fraction(1);

/** A tenth of a nanometre has nine decimals in inches; nobody reads more. */
const MOST_DECIMALS = 9;

/** The number alone, in the unit, with so many decimals. */
export const formatNumber = (amount: Fraction, unit: Unit, decimals: number): string =>
  toDecimal(fromBase(amount, unit), decimals);

export const formatAmount = (amount: Fraction, unit: Unit, decimals: number): string =>
  withUnitName(formatNumber(amount, unit, decimals), unit);

/** As a table is headed: `main journal diameter, in`. */
export const headedWithUnit = (label: string, { name }: Unit): string =>
  name === '' ? label : `${label}, ${name}`;

/** A number with its unit behind it; plain numbers, counts and tests have none. */
export const withUnitName = (number: string, { name }: Unit): string =>
  name === '' ? number : `${number} ${name}`;

const TENTH = divide(unitNamed('thou').factor, fraction(10));
const MICROMETRE = divide(unitNamed('mm').factor, fraction(1000));
const TEN_TENTHS = unitNamed('thou').factor;
const QUARTER_INCH = parseDecimal('63500000');

/**
 * A distance as it is said at the bench: in an inch shop tenths up to a thousandth, then thousandths;
 * elsewhere the unit's own decimals.
 */
export function formatDistance(distance: Fraction, unit: Unit, decimals: number): string {
  const size = absolute(distance);
  if (unit.name !== 'in' || compare(size, QUARTER_INCH) > 0) {
    return formatAmount(size, unit, decimalsThatShow(size, unit, decimals));
  }
  if (compare(size, TEN_TENTHS) < 0) {
    const count = trimmed(divide(size, TENTH), 1);
    return `${count} ${toNumber(size) <= toNumber(TENTH) ? 'tenth' : 'tenths'}`;
  }
  return `${trimmed(divide(size, TEN_TENTHS), 2)} thou`;
}

/** So many decimals, or more where a distance would come out as none. */
function decimalsThatShow(distance: Fraction, unit: Unit, decimals: number): number {
  const size = toNumber(distance) / toNumber(unit.factor);
  return size === 0
    ? decimals
    : Math.min(MOST_DECIMALS, Math.max(decimals, Math.ceil(-Math.log10(2 * size))));
}

/** Without zeros at the end; with as many decimals more as it takes for a distance not to be none. */
function trimmed(value: Fraction, decimals: number): string {
  const text = toDecimal(value, decimals).replace(/\.?0+$/, '');
  return text === '0' && value.n !== 0n ? trimmed(value, decimals + 1) : text;
}

/** A double in the unit as it is printed beside a reading: two significant digits of an uncertainty. */
export function formatUncertainty(u: number, unit: Unit): string {
  const inUnit = u / toNumber(unit.factor);
  if (inUnit === 0) return '0';
  const decimals = Math.max(0, 1 - Math.floor(Math.log10(inUnit)));
  return inUnit.toFixed(Math.min(MOST_DECIMALS, decimals));
}
