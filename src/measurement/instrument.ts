import {
  absolute,
  compare,
  divide,
  type Fraction,
  fraction,
  greatest,
  multiply,
  subtract,
  ZERO,
} from '../quantity/fraction.ts';
import { withArticle } from '../quantity/words.ts';

export const INSTRUMENT_TYPES = [
  'micrometer',
  'inside micrometer',
  'depth micrometer',
  'height gauge',
  'ball micrometer',
  'bore gauge',
  'dial indicator',
  'caliper',
  'feeler gauge',
  'gauging strip',
  'setting master',
  'gauge block',
  'torque wrench',
  'spring scale',
  'pressure gauge',
  'thermometer',
  'balance',
  'protractor',
  'burette',
  'radius gauge',
  'roughness tester',
  'hardness tester',
  'other',
] as const;

export type InstrumentType = (typeof INSTRUMENT_TYPES)[number];

/** Counted, seen or felt: no instrument stands behind it, and no error of one. */
export const BY_EYE = 'by eye';

export type ByEye = typeof BY_EYE;

/** All that a characteristic may usually be measured with. */
export const MEASURED_WITH: readonly (InstrumentType | ByEye)[] = [...INSTRUMENT_TYPES, BY_EYE];

/** `a micrometer`, `an instrument`, `by eye`. */
export const anInstrument = (type: InstrumentType | ByEye): string =>
  type === BY_EYE ? type : withArticle(type === 'other' ? 'instrument' : type);

/** `an unnamed micrometer`: no document says which. */
export const anUnnamed = (type: InstrumentType): string =>
  withArticle(`unnamed ${type === 'other' ? 'instrument' : type}`);

/** The largest error an instrument may show: an amount in the base unit, or a share of the reading. */
export type MaxError = { readonly amount: Fraction } | { readonly share: Fraction };

export interface Instrument {
  readonly id: string;
  readonly type: InstrumentType;
  /** Amounts in the base unit of what it measures. */
  readonly range?: { readonly from: Fraction; readonly to: Fraction };
  readonly resolution?: Fraction;
  readonly maxError?: MaxError;
  /** One standard deviation. */
  readonly repeatability?: Fraction;
  /** The study that found the repeatability, with the degrees of freedom that it left. */
  readonly study?: { readonly name: string; readonly dof: number };
  readonly calibration?: { readonly uncertainty: Fraction; readonly k: number };
  /** The printed steps of a gauging strip, rising. */
  readonly marks?: readonly Fraction[];
  /** The day of its last calibration: its own error is the same only until the next. */
  readonly calibrated?: string;
  readonly due?: string;
  /** The day from which its next certificate counts: until then its own error is the same. */
  readonly until?: string;
  /** Readings between these sizes are put right by what its certificate says: what is left is the certificate's uncertainty. */
  readonly putRight?: { readonly from: Fraction; readonly to: Fraction } | undefined;
  /** As written; steel where it is not said. */
  readonly material?: string;
  /** Not in the register, or there without figures: they are a cautious assumption by type. */
  readonly assumed: boolean;
  /** Of an assumed one: the register has its name and type alone. */
  readonly isRegistered?: true;
  /** No document names it: what another block was measured with may be another one. */
  readonly isNameless?: true;
  /** Where an assumed figure comes from. */
  readonly source?: string;
}

/** Whether the register gives no figure by which its readings may be wrong. */
export const isBare = ({
  resolution,
  maxError,
  repeatability,
  calibration,
  marks,
  putRight,
}: Instrument): boolean =>
  [resolution, maxError, repeatability, calibration, marks, putRight].every((each) => each === undefined);

/** Whether the register says nothing of how two readings may differ: not even its error, which both have alike, tells. */
export const isWithoutSteps = ({ type, resolution, repeatability, marks }: Instrument): boolean =>
  !FIXED.includes(type) && [resolution, repeatability, marks].every((each) => each === undefined);

/** What is not read off has no steps to be read in. */
export const FIXED: readonly InstrumentType[] = ['setting master', 'gauge block'];

export const largestErrorAt = (error: MaxError, amount: Fraction): Fraction =>
  'amount' in error ? error.amount : multiply(error.share, absolute(amount));

/**
 * Half the gap between the printed marks that a reading could as well have belonged to: between two
 * marks that gap, on a mark the wider of its two, beyond the ends the last gap.
 */
export function halfGap(marks: readonly Fraction[], amount: Fraction): Fraction {
  const gaps = marks.slice(1).map((high, index) => ({ low: marks[index] ?? high, high }));
  const touching = gaps.filter(
    ({ low, high }, index) =>
      (compare(amount, low) >= 0 || index === 0) && (compare(amount, high) <= 0 || index === gaps.length - 1),
  );
  const widest = greatest([ZERO, ...touching.map(({ low, high }) => subtract(high, low))]);
  return divide(widest, fraction(2));
}
