import { equals, type Fraction, fraction, toDecimal } from '../../quantity/fraction.ts';
import { unitNamed } from '../../quantity/units.ts';
import { asWritten, type Slip, type WrittenNumber } from './writtenNumber.ts';

/** Of any number, whatever it counts. */
export const slipsOfFigures = (number: WrittenNumber): readonly Slip[] => [
  ...movedPoint(number),
  ...swappedDigits(number),
];

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
    const padded = '0'.repeat(Math.max(0, 1 - to)) + whole.padEnd(to, '0');
    const at = Math.max(1, to);
    const moved = `${padded.slice(0, at)}.${padded.slice(at)}`.replace(/\.$/, '').replace(/^0+(?=\d)/, '');
    // A whole number stays one: 220 was 22, not 22.0.
    const kept = digits.includes('.') ? moved : moved.replace(/\.0+$/, '');
    return asWritten(number, sign + kept, 'the decimal point moved');
  });
}

/** `7` for 0.007: called out in thousandths, or in hundredths of a millimetre. */
export function wholeNumber(number: WrittenNumber, isInch: boolean): readonly Slip[] {
  const [, sign = '', whole = ''] = /^([-+]?)([1-9]\d{0,2})$/.exec(number.digits) ?? [];
  if (whole === '' || number.start.n !== 0n || !isWholeUnit(number.unit)) return [];
  const counted: readonly (readonly [number, string])[] = isInch
    ? [[3, 'thousandths']]
    : [
        [2, 'hundredths'],
        [3, 'thousandths'],
      ];
  return counted.flatMap(([places, name]) =>
    asWritten(
      number,
      `${sign}${toDecimal(fraction(BigInt(whole), 10n ** BigInt(places)), places)}`,
      `${name} written as a whole number`,
    ),
  );
}

const isWholeUnit = (unit: Fraction): boolean =>
  ['in', 'mm'].some((name) => equals(unit, unitNamed(name).factor));

/** `32478` for 3.2478: more places than a point is usually moved by. */
export function forgottenPoint(number: WrittenNumber): readonly Slip[] {
  const [, sign = '', whole = ''] = /^([-+]?)(\d{4,})$/.exec(number.digits) ?? [];
  return [1, 2, 3]
    .filter((at) => whole.length - at > 2)
    .flatMap((at) =>
      asWritten(number, `${sign}${whole.slice(0, at)}.${whole.slice(at)}`, 'the decimal point left out'),
    );
}
