import { add, divide, type Fraction, fraction, multiply, parseDecimal, subtract } from './fraction.ts';

export const QUANTITIES = [
  'length',
  'torque',
  'force',
  'spring rate',
  'pressure',
  'volume',
  'mass',
  'angle',
  'temperature',
  'time',
  'speed',
  'roughness',
  'viscosity',
  'flow',
  'percent',
  'number',
  'count',
  'pass or fail',
] as const;

export type Quantity = (typeof QUANTITIES)[number];

export interface Unit {
  /** As printed, and as written in a document; plain numbers, counts and tests have none. */
  readonly name: string;
  readonly quantity: Quantity;
  /** One of this unit in the quantity's base unit. */
  readonly factor: Fraction;
  /** What zero in this unit is in the base unit; only temperatures have one. */
  readonly zero?: Fraction;
}

/*
 * What one whole step inside stands for. Length: a tenth of a nanometre, which makes the inch (254,000,000) and the
 * millimetre (10,000,000) whole numbers, so every length a document can state is exact. Torque: newton metre; force:
 * newton; spring rate: newton a millimetre; pressure: kilopascal; volume: cubic centimetre; mass: gram; angle: degree; temperature: degree Celsius; time:
 * hour; speed: revolution per minute; roughness: micrometre; viscosity: centistokes; flow: litre
 * a minute; percent: one in a hundred; a test that was passed is one.
 */

/** Pound-force in newtons, exact: 0.45359237 kg × 9.80665 m/s² (NIST SP 811, B.8). */
const LBF = parseDecimal('4.4482216152605');
const FOOT_IN_METRES = parseDecimal('0.3048');
const INCH_IN_METRES = parseDecimal('0.0254');
const INCH_IN_MILLIMETRES = parseDecimal('25.4');
const STANDARD_GRAVITY = parseDecimal('9.80665');
/** A column of water of 1000 kg/m³, of mercury of 13 595.1 kg/m³: the conventional ones (NIST SP 811, B.8, from memory). */
const WATER_PER_METRE_IN_KILOPASCALS = STANDARD_GRAVITY;
const MERCURY_TO_WATER = parseDecimal('13.5951');
const POUND_IN_GRAMS = parseDecimal('453.59237');
const SQUARE_INCH_IN_SQUARE_METRES = multiply(INCH_IN_METRES, INCH_IN_METRES);
const SIXTEENTH = fraction(1, 16);

const unit = (name: string, quantity: Quantity, factor: Fraction, zero?: Fraction): Unit =>
  zero === undefined ? { name, quantity, factor } : { name, quantity, factor, zero };

/** Exact factors only (NIST SP 811). */
export const UNITS: readonly Unit[] = [
  unit('in', 'length', fraction(254_000_000)),
  unit('thou', 'length', fraction(254_000)),
  unit('mm', 'length', fraction(10_000_000)),
  unit('um', 'length', fraction(10_000)),
  unit('lbf ft', 'torque', multiply(LBF, FOOT_IN_METRES)),
  unit('lbf in', 'torque', multiply(LBF, INCH_IN_METRES)),
  unit('ozf in', 'torque', multiply(multiply(LBF, INCH_IN_METRES), SIXTEENTH)),
  unit('N m', 'torque', fraction(1)),
  unit('kgf m', 'torque', STANDARD_GRAVITY),
  unit('lbf', 'force', LBF),
  unit('N', 'force', fraction(1)),
  unit('kN', 'force', fraction(1000)),
  unit('lbf/in', 'spring rate', divide(LBF, INCH_IN_MILLIMETRES)),
  unit('N/mm', 'spring rate', fraction(1)),
  unit('psi', 'pressure', divide(divide(LBF, SQUARE_INCH_IN_SQUARE_METRES), fraction(1000))),
  unit('kPa', 'pressure', fraction(1)),
  unit('bar', 'pressure', fraction(100)),
  unit('kgf/cm2', 'pressure', multiply(STANDARD_GRAVITY, fraction(10))),
  unit('inH2O', 'pressure', multiply(WATER_PER_METRE_IN_KILOPASCALS, INCH_IN_METRES)),
  unit(
    'inHg',
    'pressure',
    multiply(multiply(WATER_PER_METRE_IN_KILOPASCALS, INCH_IN_METRES), MERCURY_TO_WATER),
  ),
  unit('cc', 'volume', fraction(1)),
  unit('ml', 'volume', fraction(1)),
  unit('L', 'volume', fraction(1000)),
  unit('in3', 'volume', parseDecimal('16.387064')),
  unit('g', 'mass', fraction(1)),
  unit('kg', 'mass', fraction(1000)),
  unit('oz', 'mass', multiply(POUND_IN_GRAMS, SIXTEENTH)),
  unit('lb', 'mass', POUND_IN_GRAMS),
  unit('deg', 'angle', fraction(1)),
  unit('degC', 'temperature', fraction(1)),
  unit('degF', 'temperature', fraction(5, 9), divide(fraction(-160), fraction(9))),
  unit('h', 'time', fraction(1)),
  unit('rpm', 'speed', fraction(1)),
  unit('um', 'roughness', fraction(1)),
  unit('uin', 'roughness', parseDecimal('0.0254')),
  unit('cSt', 'viscosity', fraction(1)),
  unit('mm2/s', 'viscosity', fraction(1)),
  unit('L/min', 'flow', fraction(1)),
  // Of the United States, 231 cubic inches.
  unit('gal/min', 'flow', parseDecimal('3.785411784')),
  unit('%', 'percent', fraction(1)),
  unit('', 'number', fraction(1)),
  unit('', 'count', fraction(1)),
  unit('', 'pass or fail', fraction(1)),
];

/** Spellings that shops write; accepted, and printed in the standard form. */
const OTHER_SPELLINGS: readonly (readonly [string, string])[] = [
  ['ft-lb', 'lbf ft'],
  ['lb-ft', 'lbf ft'],
  ['in-lb', 'lbf in'],
  ['lb-in', 'lbf in'],
  ['Nm', 'N m'],
];

/** By name; a micrometre of length and one of roughness share theirs. */
const byName = new Map<string, readonly Unit[]>();
for (const each of UNITS) if (each.name !== '') addUnder(each.name, each);
for (const [spelling, name] of OTHER_SPELLINGS) addUnder(spelling, unitNamed(name));

function addUnder(name: string, named: Unit): void {
  byName.set(name, [...(byName.get(name) ?? []), named]);
}

export const UNIT_SPELLINGS: readonly string[] = [...byName.keys()];

/** The unit of this name of a quantity; where it has none, of another, so that a message can say of which. */
export function findUnit(name: string, quantity?: Quantity): Unit | undefined {
  const found = byName.get(name) ?? [];
  return found.find((each) => each.quantity === quantity) ?? found[0];
}

/** A unit known to exist; asking for another is a bug. */
export function unitNamed(name: string): Unit {
  const found = findUnit(name);
  if (found === undefined) throw new RangeError(`no unit is named ${name}`);
  return found;
}

export const unitsOf = (quantity: Quantity): readonly Unit[] => byQuantity.get(quantity) ?? [];

/** Asked for every plain number of every document. */
const byQuantity: ReadonlyMap<Quantity, readonly Unit[]> = new Map(
  QUANTITIES.map((quantity) => [quantity, UNITS.filter((each) => each.quantity === quantity)]),
);

/** A number of units as an amount in the base unit. */
export function toBase(value: Fraction, of: Unit): Fraction {
  const scaled = multiply(value, of.factor);
  return of.zero === undefined ? scaled : add(scaled, of.zero);
}

/** An amount in the base unit as a number of units. */
export function fromBase(amount: Fraction, of: Unit): Fraction {
  return divide(of.zero === undefined ? amount : subtract(amount, of.zero), of.factor);
}
