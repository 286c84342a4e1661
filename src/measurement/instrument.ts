import {
  absolute,
  compare,
  divide,
  type Fraction,
  fraction,
  multiply,
  subtract,
  toNumber,
} from '../quantity/fraction.ts';
import type { ErrorTerm } from './value.ts';

export const INSTRUMENT_TYPES = [
  'micrometer',
  'inside micrometer',
  'depth micrometer',
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
  'other',
] as const;

export type InstrumentType = (typeof INSTRUMENT_TYPES)[number];

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
  readonly due?: string;
  /** As written; steel where it is not said. */
  readonly material?: string;
  /** Not in the register: its figures are a cautious assumption by type. */
  readonly assumed: boolean;
  /** Where an assumed figure comes from. */
  readonly source?: string;
}

/** What one reading needs told apart from its instrument. */
export interface ReadingError {
  readonly amount: Fraction;
  /** File and pointer: the reading's own errors are shared with no other reading. */
  readonly id: string;
  /** Half the width of a reading given as a range (`0.003 to 0.004`); it stands for the marks of a strip. */
  readonly halfRange?: Fraction;
}

/** Half of the full width of a rectangular distribution to its standard uncertainty (JCGM 100:2008, 4.3.7). */
const rectangular = (half: Fraction): number => Math.abs(toNumber(half)) / Math.sqrt(3);

const HALF = fraction(1, 2);
const certain = (u: number): ErrorTerm => ({ u, dof: Number.POSITIVE_INFINITY });

/**
 * All stated sources of error of a reading. The largest error and the calibration are the instrument's
 * own, alike in all its readings of one calibration, so they stand under its name; resolution,
 * repeatability and marks are the reading's.
 */
export function readingTerms(
  instrument: Instrument,
  reading: ReadingError,
  setter?: Instrument,
): Map<string, ErrorTerm> {
  const terms = new Map<string, ErrorTerm>();
  const put = (source: string, u: number): void => {
    if (u > 0) terms.set(source, certain(u));
  };
  for (const shared of setter === undefined ? [instrument] : [instrument, setter]) {
    if (shared.maxError !== undefined) {
      put(`largest error of ${shared.id}`, rectangular(largestErrorAt(shared.maxError, reading.amount)));
    }
    if (shared.calibration !== undefined) {
      put(`calibration of ${shared.id}`, toNumber(shared.calibration.uncertainty) / shared.calibration.k);
    }
  }
  const own = (what: string, by = ''): string => `${what} of ${instrument.id}${by} at ${reading.id}`;
  if (instrument.resolution !== undefined) {
    put(own('resolution'), rectangular(multiply(instrument.resolution, HALF)));
  }
  const repeats = repeatabilityOf(instrument);
  if (repeats !== undefined && repeats.term.u > 0) terms.set(own('repeatability', repeats.by), repeats.term);
  if (reading.halfRange !== undefined) put(own('range read'), rectangular(reading.halfRange));
  else if (instrument.marks !== undefined) {
    put(own('marks'), rectangular(halfGap(instrument.marks, reading.amount)));
  }
  return terms;
}

/** As stated, and then taken for certain, or as a study found it. */
function repeatabilityOf({
  repeatability,
  study,
}: Instrument): { readonly by: string; readonly term: ErrorTerm } | undefined {
  if (repeatability === undefined) return undefined;
  const u = toNumber(repeatability);
  return study === undefined
    ? { by: '', term: certain(u) }
    : { by: ` by study ${study.name}`, term: { u, dof: study.dof } };
}

export const largestErrorAt = (error: MaxError, amount: Fraction): Fraction =>
  'amount' in error ? error.amount : multiply(error.share, absolute(amount));

/**
 * Half the gap between the printed marks that a reading could as well have belonged to: between two
 * marks that gap, on a mark the wider of its two, beyond the ends the last gap.
 */
export function halfGap(marks: readonly Fraction[], amount: Fraction): Fraction {
  let widest = fraction(0);
  for (let i = 1; i < marks.length; i++) {
    const [low, high] = [marks[i - 1], marks[i]];
    if (low === undefined || high === undefined) continue;
    const touches =
      (compare(amount, low) >= 0 || i === 1) && (compare(amount, high) <= 0 || i === marks.length - 1);
    const gap = subtract(high, low);
    if (touches && compare(gap, widest) > 0) widest = gap;
  }
  return divide(widest, fraction(2));
}
