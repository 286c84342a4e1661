import {
  absolute,
  compare,
  divide,
  type Fraction,
  fraction,
  least,
  multiply,
  parseDecimal,
  toNumber,
} from '../quantity/fraction.ts';
import { type Quantity, toBase, unitNamed } from '../quantity/units.ts';
import type { Instrument, InstrumentType, MaxError } from './instrument.ts';

const length = (text: string, unit: string): MaxError => ({
  amount: toBase(parseDecimal(text), unitNamed(unit)),
});

interface Assumption {
  readonly maxError: MaxError;
  /** Where the figure comes from; `explain` prints it. */
  readonly source: string;
}

/**
 * What is assumed of an instrument that is not in the register: cautious figures by type, of
 * instruments in fair order. They are shown as assumed wherever they decide.
 */
const ASSUMED: Partial<Record<InstrumentType, Assumption>> = {
  'inside micrometer': { maxError: length('0.008', 'mm'), source: 'our judgement, no source' },
  'depth micrometer': { maxError: length('0.008', 'mm'), source: 'our judgement, no source' },
  'bore gauge': { maxError: length('0.006', 'mm'), source: 'our budget: setting 4, dial 3.5, body 2 µm' },
  'dial indicator': { maxError: length('0.015', 'mm'), source: 'JIS B 7503, whole range of 10 mm' },
  caliper: { maxError: length('0.05', 'mm'), source: 'DIN 862, inside and depth' },
  'feeler gauge': { maxError: length('0.01', 'mm'), source: 'our judgement, no source' },
  'setting master': { maxError: length('0.002', 'mm'), source: 'our judgement, no source' },
  'gauging strip': { maxError: length('0.0005', 'in'), source: 'half a gap of 0.001 in between marks' },
  balance: { maxError: { amount: fraction(1) }, source: 'our judgement, no source: 1 g' },
  protractor: { maxError: { amount: fraction(1) }, source: 'our judgement, no source: 1 degree' },
  'radius gauge': { maxError: length('0.1', 'mm'), source: 'our judgement, no source' },
  burette: { maxError: { amount: parseDecimal('0.2') }, source: 'our judgement, no source: 0.2 cc' },
  'roughness tester': { maxError: { share: parseDecimal('0.1') }, source: 'our judgement, no source' },
  'spring scale': { maxError: { share: parseDecimal('0.05') }, source: 'our judgement, no source' },
  'pressure gauge': { maxError: { share: parseDecimal('0.03') }, source: 'our judgement, no source' },
};

const OTHER_LENGTH: Assumption = { maxError: length('0.02', 'mm'), source: 'our judgement, no source' };
const OTHER: Assumption = { maxError: { share: parseDecimal('0.02') }, source: 'our judgement, no source' };

/** ISO 6789: 4 % above 10 N m, 6 % at or below. */
const TEN_NEWTON_METRES = fraction(10);
const wrench = (amount: Fraction): Assumption => ({
  maxError: { share: parseDecimal(compare(amount, TEN_NEWTON_METRES) > 0 ? '0.04' : '0.06') },
  source: 'ISO 6789, setting tools',
});

/** DIN 863-1, error limits of outside micrometers: 4 µm up to 50 mm, then 1 µm more for each 50 mm. */
function micrometer(size: Fraction): Assumption {
  const steps = Math.max(1, Math.ceil(toNumber(divide(absolute(size), FIFTY_MILLIMETRES))));
  const micrometres = Math.max(4, steps + 3);
  return {
    maxError: { amount: multiply(fraction(micrometres), MICROMETRE) },
    source: `DIN 863-1, ${50 * (steps - 1)} to ${50 * steps} mm`,
  };
}

const FIFTY_MILLIMETRES = toBase(fraction(50), unitNamed('mm'));
const MICROMETRE = toBase(parseDecimal('0.001'), unitNamed('mm'));

export function assumptionFor(type: InstrumentType, quantity: Quantity, amount: Fraction): Assumption {
  if (type === 'torque wrench') return wrench(amount);
  if (quantity === 'length' && (type === 'micrometer' || type === 'ball micrometer'))
    return micrometer(amount);
  return ASSUMED[type] ?? (quantity === 'length' ? OTHER_LENGTH : OTHER);
}

/** No instrument that measures engines is read in steps longer than a vernier's: a bare `0` is not one inch wide. */
const COARSEST_LENGTH = toBase(parseDecimal('0.05'), unitNamed('mm'));
/** A wrench is read in whole N m or pounds-feet, and 0 is written alike for both: our judgement, no source. */
const COARSEST_ZERO_TORQUE = fraction(1);

function coarsestStep(quantity: Quantity, amount: Fraction): readonly Fraction[] {
  if (quantity === 'length') return [COARSEST_LENGTH];
  return quantity === 'torque' && amount.n === 0n ? [COARSEST_ZERO_TORQUE] : [];
}

/**
 * An instrument of this type as it is assumed to be. Its resolution is one step of the last digit
 * that was written, since nobody writes digits that the scale does not show.
 */
export const assumedInstrument = (
  id: string,
  type: InstrumentType,
  quantity: Quantity,
  amount: Fraction,
  lastDigit: Fraction,
): Instrument => ({
  id,
  type,
  ...assumptionFor(type, quantity, amount),
  resolution: least([lastDigit, ...coarsestStep(quantity, amount)]),
  assumed: true,
});
