import { type Readings, type Wanted, workedOut } from './workedOut.ts';

/** A range that a source prints: the parts that leave the least, then those that leave the greatest. */
export interface PublishedRange extends Wanted {
  readonly what: string;
  readonly source: string;
  readonly tight: Readings;
  readonly loose: Readings;
  readonly least: string;
  readonly greatest: string;
}

export const rangeOf = (printed: PublishedRange): readonly [string, string] => [
  workedOut(printed, printed.tight, printed.least),
  workedOut(printed, printed.loose, printed.greatest),
];
