import { add, type Fraction, multiply, parseDecimal } from '../../quantity/fraction.ts';

/** A number as it stands on the sheet, and what it counts. */
export interface WrittenNumber {
  /** `3.2847`, with its sign where one was written. */
  readonly digits: string;
  /** What one whole of it is worth, in the base unit. */
  readonly unit: Fraction;
  /** What is added to it: the master that a gauge was set to. */
  readonly start: Fraction;
}

/** One way in which a number may have got on the sheet instead of another. */
export interface Slip {
  /** `two digits swapped`. */
  readonly words: string;
  /** What was meant, in the base unit, and as it would have been written. */
  readonly intended: Fraction;
  readonly written: string;
}

/** The number that was written, in the base unit. */
export const amountOf = ({ digits, unit, start }: WrittenNumber): Fraction =>
  add(multiply(parseDecimal(digits), unit), start);

const PLAIN = /^[-+]?\d*\.?\d+$/;

export function asWritten(number: WrittenNumber, digits: string, words: string): readonly Slip[] {
  if (!PLAIN.test(digits)) return [];
  return [{ words, intended: amountOf({ ...number, digits }), written: digits }];
}

export const decimalsIn = (digits: string): number =>
  digits.includes('.') ? digits.length - digits.indexOf('.') - 1 : 0;
