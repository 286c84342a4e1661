import { add, type Fraction, fraction, multiply, parseDecimal, toNumber, ZERO } from './fraction.ts';
import type { Quantity } from './units.ts';

interface SiUnit {
  readonly name: string;
  /** One of the quantity's base unit in it, but for `times`. */
  readonly factor: Fraction;
  readonly times?: number;
  /** What zero in the base unit is in it. */
  readonly zero?: Fraction;
}

const WHOLE = fraction(1);
const PLAIN: SiUnit = { name: '', factor: WHOLE };

/** The coherent unit of the SI for each quantity; plain numbers, counts and tests have none. */
const SI: Readonly<Record<Quantity, SiUnit>> = {
  length: { name: 'm', factor: fraction(1, 10_000_000_000) },
  torque: { name: 'N m', factor: WHOLE },
  force: { name: 'N', factor: WHOLE },
  'spring rate': { name: 'N/m', factor: fraction(1000) },
  pressure: { name: 'Pa', factor: fraction(1000) },
  volume: { name: 'm3', factor: fraction(1, 1_000_000) },
  mass: { name: 'kg', factor: fraction(1, 1000) },
  angle: { name: 'rad', factor: fraction(1, 180), times: Math.PI },
  temperature: { name: 'K', factor: WHOLE, zero: parseDecimal('273.15') },
  time: { name: 's', factor: fraction(3600) },
  speed: { name: '1/s', factor: fraction(1, 60) },
  roughness: { name: 'm', factor: fraction(1, 1_000_000) },
  viscosity: { name: 'm2/s', factor: fraction(1, 1_000_000) },
  flow: { name: 'm3/s', factor: fraction(1, 60_000) },
  percent: { name: '', factor: fraction(1, 100) },
  number: PLAIN,
  count: PLAIN,
  'pass or fail': PLAIN,
};

export const siName = (quantity: Quantity): string => SI[quantity].name;

/** An amount in the base unit of its quantity, in the SI's; rounded once. */
export function inSi(amount: Fraction, quantity: Quantity): number {
  const { factor, zero = ZERO, times = 1 } = SI[quantity];
  return toNumber(add(multiply(amount, factor), zero)) * times;
}
