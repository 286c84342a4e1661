import type { Point } from '../../documents/session/reading.ts';
import type { WrittenNumber } from '../../measurement/slips/writtenNumber.ts';
import { fraction, multiply, parseDecimal, subtract } from '../../quantity/fraction.ts';

/** The number or numbers of a point as they stand on the sheet; a unit beside them is no part of them. */
export function writtenNumbers(point: Point): readonly WrittenNumber[] {
  const numbers = point.written.split(', ').map((text) => /^[-+]?\d*\.?\d+/.exec(text)?.[0] ?? '');
  const places = (digits = ''): number =>
    digits.includes('.') ? digits.length - digits.indexOf('.') - 1 : 0;
  const unit = multiply(point.lastDigit, fraction(10n ** BigInt(places(numbers[0]))));
  return numbers.flatMap((digits, index) => {
    if (digits === '') return [];
    const amount = point.repeats?.[index] ?? point.amount;
    return [{ digits, unit, start: subtract(amount, multiply(parseDecimal(digits), unit)) }];
  });
}
