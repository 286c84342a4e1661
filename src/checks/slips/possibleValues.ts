import type { Slip } from '../../measurement/slips/writtenNumber.ts';

/** `3.2478 (two digits swapped), 3.2597 (one turn of a micrometer)`: what may have been meant; the kinds alone where that is too many. */
export function possibleValues(slips: readonly Slip[]): string {
  const values = [...new Set(slips.map(({ written }) => written))];
  return values.length > MOST_NAMED
    ? kindsOf(slips).join(', ')
    : values.map((value) => `${value} (${kindsOf(slips, value).join(' or ')})`).join(', ');
}

const kindsOf = (slips: readonly Slip[], value?: string): readonly string[] => [
  ...new Set(
    slips.flatMap(({ words, written }) => (value === undefined || written === value ? [words] : [])),
  ),
];

/** More values than these are no help to find the one that was meant. */
const MOST_NAMED = 4;
