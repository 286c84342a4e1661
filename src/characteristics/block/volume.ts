import { addValues, combineValues, meanValue, type Value } from '../../measurement/value.ts';
import {
  divide,
  type Fraction,
  fraction,
  multiply,
  parseDecimal,
  toNumber,
} from '../../quantity/fraction.ts';
import { toBase, unitNamed } from '../../quantity/units.ts';
import { type Grid, type Measured, valuesOf } from '../grid.ts';

/** A quarter of π, to more digits than any volume has. */
const QUARTER_PI = parseDecimal('0.785398163397448309616');

/** One base unit of length, cubed, in cubic centimetres. */
const CC = divide(fraction(1), cube(toBase(fraction(10), unitNamed('mm'))));

function cube(length: Fraction): Fraction {
  return multiply(length, multiply(length, length));
}

/** Printed to the hundredth of a cubic centimetre: no burette that engines are filled from shows more. */
const LAST_DIGIT_CC = parseDecimal('0.01');

/** The mean of what was read; undefined where nothing was. */
export const meanOf = (grid: Grid | undefined): Value | undefined => {
  const values = grid === undefined ? [] : valuesOf(grid);
  return values.length === 0 ? undefined : meanValue(values);
};

/** A quarter of π × diameter² × height, with the error of each by its slope. */
function cylinderVolume(diameter: Value, height: Value): Value {
  const [d, h] = [toNumber(diameter.amount), toNumber(height.amount)];
  const factor = multiply(QUARTER_PI, CC);
  const area = multiply(diameter.amount, diameter.amount);
  const slope = toNumber(factor);
  return combineValues(multiply(factor, multiply(area, height.amount)), [
    [diameter, slope * 2 * d * h],
    [height, slope * d * d],
  ]);
}

/** The same of readings; undefined where one of them was not taken. */
export const cylinderOf = (bore: Value | undefined, height: Value | undefined): Value | undefined =>
  bore && height && cylinderVolume(bore, height);

export const totalOf = (parts: readonly Grid[]): Value | undefined => {
  const [first, ...rest] = parts.flatMap((each) => meanOf(each) ?? []);
  return first && rest.reduce(addValues, first);
};

/** (swept + clearance volume) / clearance volume. */
export function compressionRatio(swept: Value, clearance: Value): Value | undefined {
  if (clearance.amount.n <= 0n) return undefined;
  const [s, c] = [toNumber(swept.amount), toNumber(clearance.amount)];
  const ratio = divide(addValues(swept, clearance).amount, clearance.amount);
  return combineValues(ratio, [
    [swept, 1 / c],
    [clearance, -s / (c * c)],
  ]);
}

export const asVolume = (value: Value | undefined): Measured | undefined => printedTo(LAST_DIGIT_CC, value);

export const printedTo = (lastDigit: Fraction, value: Value | undefined): Measured | undefined =>
  value && { least: value, mean: value, greatest: value, lastDigit };
