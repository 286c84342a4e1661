import { add, type Fraction, ZERO } from '../../quantity/fraction.ts';

/** What an instrument is known to show beyond the truth. */
export interface KnownError {
  /** Whether it did so on a day, `YYYY-MM-DD`. */
  readonly isOn: (day: string) => boolean;
  /** Shown minus true of a reading of this amount, in the base unit; undefined where nothing is known of it. */
  readonly at: (amount: Fraction) => Fraction | undefined;
}

/** By the name of the instrument. */
export type KnownErrors = ReadonlyMap<string, readonly KnownError[]>;

/** How much more an instrument showed than was there, by all that is known of it. */
export const shownBeyond = (known: readonly KnownError[], amount: Fraction, day: string): Fraction =>
  known
    .filter(({ isOn }) => isOn(day))
    .map(({ at }) => at(amount) ?? ZERO)
    .reduce(add, ZERO);
