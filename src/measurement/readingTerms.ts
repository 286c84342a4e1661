import { compare, type Fraction, fraction, multiply, toNumber } from '../quantity/fraction.ts';
import { FIXED, halfGap, type Instrument, largestErrorAt } from './instrument.ts';
import type { ErrorTerm, Range } from './value.ts';

/** What one reading needs told apart from its instrument. */
export interface ReadingError {
  readonly amount: Fraction;
  /** File and pointer: the reading's own errors are shared with no other reading. */
  readonly id: string;
  /** File and pointer of its block, whose readings were taken with one instrument from one zero; else it stands alone. */
  readonly block?: string;
  /** The size that its gauge was zeroed at, where that is stated. */
  readonly setAt?: Fraction | undefined;
  /** What its gauge was zeroed at, where that was done anew within the block. */
  readonly zeroedAt?: string | undefined;
  /** The day on which it was read. */
  readonly on?: string;
  /** Of a reading given as a range (`0.003 to 0.004`), which stands for the marks of a strip. */
  readonly range?: Range | undefined;
  readonly repeats?: Repeats | undefined;
}

/** One point read several times: how often, and the standard deviation of the single readings. */
export interface Repeats {
  readonly count: number;
  readonly deviation: number;
}

/** Takes one source of error. In this way no lists are made on the way: every point of every reading has some terms. */
type Put = (source: string, term: ErrorTerm) => void;

/** Adds sources of error to those of a reading; what adds nothing is left out. */
const into =
  (terms: Map<string, ErrorTerm>): Put =>
  (source, term) => {
    if (term.u > 0) terms.set(source, term);
  };

/**
 * All stated sources of error of a reading: the instrument's own and those of this reading, and of a gauge that was
 * set with another the setter's own and what came in when the gauge was zeroed.
 */
export function readingTerms(
  instrument: Instrument,
  reading: ReadingError,
  setter?: Instrument,
): Map<string, ErrorTerm> {
  const terms = new Map<string, ErrorTerm>();
  const put = into(terms);
  lastingTerms(instrument, reading.amount, reading, put);
  if (setter !== undefined) {
    lastingTerms(setter, reading.setAt ?? reading.amount, reading, put);
    zeroingTerms(setter, reading, put);
  }
  ownTerms(instrument, reading, put);
  return terms;
}

/** Alike in all readings of one calibration: those stand under one name. */
function lastingTerms(
  of: Instrument,
  amount: Fraction,
  { id, block = id, on }: ReadingError,
  put: Put,
): void {
  const { calibration } = of;
  const maxError = isPutRight(of, amount) ? undefined : of.maxError;
  const isBefore = on !== undefined && on < (of.calibrated ?? on);
  const next = of.until ?? (isBefore ? of.calibrated : undefined);
  const name = `${of.id}${next === undefined ? '' : ` before ${next}`}${of.isNameless ? ` at ${block}` : ''}`;
  const lasting = (u: number): ErrorTerm =>
    of.isNameless ? certain(u, of) : { u, dof: Number.POSITIVE_INFINITY, of: of.id, instrument: of.id };
  if (maxError !== undefined)
    put(`largest error of ${name}`, lasting(rectangular(largestErrorAt(maxError, amount))));
  if (calibration !== undefined)
    put(`calibration of ${name}`, lasting(toNumber(calibration.uncertainty) / calibration.k));
}

const isPutRight = ({ putRight }: Instrument, amount: Fraction): boolean =>
  putRight !== undefined && compare(amount, putRight.from) >= 0 && compare(amount, putRight.to) <= 0;

/** The setter was read once, when the gauge was zeroed: all readings from that zero are off by the same. */
function zeroingTerms(
  setter: Instrument,
  { id, block = id, zeroedAt = block }: ReadingError,
  put: Put,
): void {
  const at = `at zeroing at ${zeroedAt}`;
  const resolution = FIXED.includes(setter.type) ? undefined : setter.resolution;
  const repeatability = repeatabilityOf(setter);
  if (resolution !== undefined) put(`resolution of ${setter.id} ${at}`, ofResolution(resolution, setter));
  if (repeatability !== undefined) put(`${repeatabilityName(setter)} ${at}`, repeatability);
}

function ownTerms(instrument: Instrument, reading: ReadingError, put: Put): void {
  const { id, resolution, marks } = instrument;
  const at = `of ${id} at ${reading.id}`;
  const { amount, range } = reading;
  const half = range?.above;
  const gap = half === undefined ? marks && halfGap(marks, amount) : undefined;
  if (resolution !== undefined) put(`resolution ${at}`, ofResolution(resolution, instrument));
  repeatedTerm(instrument, reading, put);
  if (half !== undefined)
    put(`range read ${at}`, { ...certain(rectangular(half), instrument), isRange: true });
  if (gap !== undefined)
    put(`marks ${at}`, {
      ...certain(rectangular(gap), instrument),
      ...(range !== undefined && { isRange: true }),
    });
}

/**
 * The mean of n readings scatters as the register says of one, divided by √n; or as the n readings themselves show,
 * s/√n with n − 1 degrees of freedom (JCGM 100:2008, 4.2.3; from memory), where that is more.
 */
function repeatedTerm(instrument: Instrument, { id, repeats }: ReadingError, put: Put): void {
  const { count, deviation } = repeats ?? { count: 1, deviation: 0 };
  const known = repeatabilityOf(instrument);
  if (known === undefined || deviation > known.u)
    put(`spread of repeats at ${id}`, {
      u: deviation / Math.sqrt(count),
      dof: count - 1,
      of: instrument.id,
    });
  else put(`${repeatabilityName(instrument)} at ${id}`, { ...known, u: known.u / Math.sqrt(count) });
}

/** As stated, and then taken for certain, or as a study found it. */
function repeatabilityOf(instrument: Instrument): ErrorTerm | undefined {
  const { id, repeatability, study } = instrument;
  if (repeatability === undefined) return undefined;
  const u = toNumber(repeatability);
  return study === undefined
    ? certain(u, instrument)
    : { u, dof: study.dof, estimate: `study ${study.name} of ${id}`, of: id };
}

const repeatabilityName = ({ id, study }: Instrument): string =>
  `repeatability of ${id}${study === undefined ? '' : ` by study ${study.name}`}`;

const certain = (u: number, { id: of }: Instrument): ErrorTerm => ({ u, dof: Number.POSITIVE_INFINITY, of });

/** Half of the full width of a rectangular distribution to its standard uncertainty (JCGM 100:2008, 4.3.7). */
const rectangular = (half: Fraction): number => Math.abs(toNumber(half)) / Math.sqrt(3);

const HALF = fraction(1, 2);
const ofResolution = (step: Fraction, instrument: Instrument): ErrorTerm =>
  certain(rectangular(multiply(step, HALF)), instrument);
