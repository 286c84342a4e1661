import {
  add,
  divide,
  equals,
  type Fraction,
  fraction,
  multiply,
  parseDecimal,
  subtract,
  toDecimal,
} from '../quantity/fraction.ts';
import { unitNamed } from '../quantity/units.ts';

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

const INCH = unitNamed('in').factor;
const MILLIMETRE = unitNamed('mm').factor;

/** Steps that a person reads past: on the thimble, and from one micrometer of a set to the next. */
const INCH_STEPS: readonly (readonly [Fraction, string])[] = [
  [multiply(parseDecimal('0.025'), INCH), '25 thousandths out, one turn of a micrometer'],
  [INCH, 'one inch out'],
];
const METRIC_STEPS: readonly (readonly [Fraction, string])[] = [
  [multiply(parseDecimal('0.5'), MILLIMETRE), '0.5 mm out, one turn of a micrometer'],
  [multiply(fraction(25), MILLIMETRE), '25 mm out, the next micrometer of a set'],
];

/** Every number that a usual slip of the pen could have turned into this one. The list is of common practice, no source. */
export function slipsOf(number: WrittenNumber): readonly Slip[] {
  const isInch = isPowerOfTen(divide(INCH, number.unit));
  return [
    ...swappedDigits(number),
    ...movedPoint(number),
    ...forgottenPoint(number),
    ...(isInch ? INCH_STEPS : METRIC_STEPS).flatMap(([step, words]) => stepped(number, step, words)),
    ...otherUnit(number, isInch),
  ];
}

/** The number that was written, in the base unit. */
export const amountOf = ({ digits, unit, start }: WrittenNumber): Fraction =>
  add(multiply(parseDecimal(digits), unit), start);

const PLAIN = /^[-+]?\d*\.?\d+$/;

function swappedDigits(number: WrittenNumber): readonly Slip[] {
  const { digits } = number;
  const places = [...digits].flatMap((character, index) => (/\d/.test(character) ? [index] : []));
  return places.flatMap((first, index) => {
    const second = places[index + 1];
    if (second === undefined || digits[first] === digits[second]) return [];
    const swapped =
      digits.slice(0, first) +
      digits.charAt(second) +
      digits.slice(first + 1, second) +
      digits.charAt(first) +
      digits.slice(second + 1);
    return asWritten(number, swapped, 'two digits swapped');
  });
}

/** One or two places either way: farther and nothing of the number is left to recognise. */
function movedPoint(number: WrittenNumber): readonly Slip[] {
  const sign = /^[-+]?/.exec(number.digits)?.[0] ?? '';
  const digits = number.digits.slice(sign.length);
  const whole = digits.replace('.', '');
  const point = digits.includes('.') ? digits.indexOf('.') : digits.length;
  return [-2, -1, 1, 2].flatMap((by) => {
    const to = point + by;
    const padded = to <= 0 ? '0'.repeat(1 - to) + whole : whole.padEnd(to, '0');
    const at = Math.max(1, to);
    const moved = `${padded.slice(0, at)}.${padded.slice(at)}`.replace(/\.$/, '').replace(/^0+(?=\d)/, '');
    // A whole number stays one: 220 was 22, not 22.0.
    const kept = digits.includes('.') ? moved : moved.replace(/\.0+$/, '');
    return asWritten(number, sign + kept, 'the decimal point moved');
  });
}

/** `32478` for 3.2478: more places than a point is usually moved by. */
function forgottenPoint(number: WrittenNumber): readonly Slip[] {
  const [, sign = '', whole = ''] = /^([-+]?)(\d{4,})$/.exec(number.digits) ?? [];
  return [1, 2, 3]
    .filter((at) => whole.length - at > 2)
    .flatMap((at) =>
      asWritten(number, `${sign}${whole.slice(0, at)}.${whole.slice(at)}`, 'the decimal point left out'),
    );
}

function asWritten(number: WrittenNumber, digits: string, words: string): readonly Slip[] {
  if (!PLAIN.test(digits)) return [];
  return [{ words, intended: amountOf({ ...number, digits }), written: digits }];
}

function stepped(number: WrittenNumber, step: Fraction, words: string): readonly Slip[] {
  const places = decimalsIn(number.digits);
  return [step, multiply(step, fraction(-1))].map((by) => {
    const intended = add(amountOf(number), by);
    return {
      words,
      intended,
      written: toDecimal(divide(subtract(intended, number.start), number.unit), places),
    };
  });
}

/** A deviation from a master is small in either unit, and is left alone. */
function otherUnit({ digits, start }: WrittenNumber, isInch: boolean): readonly Slip[] {
  if (start.n !== 0n) return [];
  const [unit, name, words] = isInch
    ? [MILLIMETRE, 'mm', 'millimetres written as inches']
    : [INCH, 'in', 'inches written as millimetres'];
  return [{ words, intended: multiply(parseDecimal(digits), unit), written: `${digits} ${name}` }];
}

const decimalsIn = (digits: string): number =>
  digits.includes('.') ? digits.length - digits.indexOf('.') - 1 : 0;

/** Of inches and their tenths, thousandths and ten-thousandths. */
function isPowerOfTen(ratio: Fraction): boolean {
  let power = fraction(1);
  for (let i = 0; i <= 6; i++, power = multiply(power, fraction(10))) {
    if (equals(ratio, power)) return true;
  }
  return false;
}
