import { asWritten, decimalsIn, type Slip, type WrittenNumber } from './writtenNumber.ts';

/**
 * Numbers that differ from this one by one figure: misread, dropped, or written twice. A misread figure explains nearly
 * anything, so it is thought of last. `decimals` is how many the other readings of the sheet have.
 */
export const misreadFigures = (number: WrittenNumber, decimals: number): readonly Slip[] => [
  // With a decimal less than the others have, one is lacking: that comes before any other.
  ...(decimalsIn(number.digits) < decimals ? [] : misread(number)),
  ...dropped(number, decimals),
  ...tooMany(number, decimals),
];

const FIGURES = [...'0123456789'];

const placesIn = (digits: string): readonly number[] =>
  [...digits].flatMap((character, index) => (/\d/.test(character) ? [index] : []));

const misread = (number: WrittenNumber): readonly Slip[] =>
  placesIn(number.digits).flatMap((at) =>
    FIGURES.filter((figure) => figure !== number.digits.charAt(at)).flatMap((figure) =>
      asWritten(number, replaced(number.digits, at, 1, figure), 'one figure misread'),
    ),
  );

/** `3.278` for 3.2478. */
function dropped(number: WrittenNumber, decimals: number): readonly Slip[] {
  const { digits } = number;
  const first = digits.search(/\d/);
  const last = digits.length;
  return Array.from({ length: last - first + 1 }, (_, index) => first + index)
    .flatMap((at) => FIGURES.map((figure) => replaced(digits, at, 0, figure)))
    .filter((each) => decimalsIn(each) <= decimals && !/^[-+]?0\d/.test(each))
    .flatMap((each) => asWritten(number, each, 'a figure dropped'));
}

/** `3.24478`, or `33.2478`, for 3.2478. */
const tooMany = (number: WrittenNumber, decimals: number): readonly Slip[] =>
  placesIn(number.digits)
    .map((at) => replaced(number.digits, at, 1, ''))
    .filter((each) => decimalsIn(each) >= decimals)
    .flatMap((each) => asWritten(number, each, 'a figure too many'));

const replaced = (digits: string, at: number, count: number, by: string): string =>
  digits.slice(0, at) + by + digits.slice(at + count);
