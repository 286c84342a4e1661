import {
  absolute,
  add,
  compare,
  divide,
  type Fraction,
  greatest,
  multiply,
  subtract,
} from '../../quantity/fraction.ts';
import type { Instrument } from '../instrument.ts';
import type { KnownError } from './knownError.ts';

/** The error of an instrument at one point, shown minus true, in the base unit. */
export interface CertifiedPoint {
  readonly at: Fraction;
  readonly asFound: Fraction | undefined;
  /** The same as found where nothing was set. */
  readonly asLeft: Fraction | undefined;
}

/** What a laboratory says of an instrument on a day. */
export interface Certificate {
  readonly date: string;
  readonly due: string | undefined;
  readonly by: string | undefined;
  readonly number: string | undefined;
  /** By size. */
  readonly points: readonly CertifiedPoint[];
  readonly uncertainty: NonNullable<Instrument['calibration']> | undefined;
}

/** The certificate that counts on a day, and the day from which the next one does. `all` are by date. */
export function inForce(
  all: readonly Certificate[],
  day: string,
): { readonly certificate: Certificate | undefined; readonly next: string | undefined } {
  const index = all.findLastIndex(({ date }) => date <= day);
  return { certificate: all[index], next: all[index + 1]?.date };
}

interface Left {
  readonly at: Fraction;
  readonly error: Fraction;
}

const leftOf = ({ points }: Certificate): readonly Left[] =>
  points.flatMap(({ at, asLeft }) => (asLeft === undefined ? [] : [{ at, error: asLeft }]));

/** The sizes between which its errors as left are known; undefined where none is. */
export function certifiedSpan(certificate: Certificate): Instrument['putRight'] {
  const all = leftOf(certificate);
  const [first, last] = [all[0], all.at(-1)];
  return first && last && { from: first.at, to: last.at };
}

/** The error as left: at a point as stated, between two on the straight line. Beyond the points nothing is known. */
export function certifiedError(certificate: Certificate, amount: Fraction): Fraction | undefined {
  const all = leftOf(certificate);
  const above = all.find(({ at }) => compare(at, amount) >= 0);
  const below = all.findLast(({ at }) => compare(at, amount) <= 0);
  if (above === undefined || below === undefined) return undefined;
  if (compare(above.at, below.at) === 0) return above.error;
  const share = divide(subtract(amount, below.at), subtract(above.at, below.at));
  return add(below.error, multiply(share, subtract(above.error, below.error)));
}

/** By which readings are put right from one certificate to the next; by none that says not how surely. */
export const certifiedErrors = (all: readonly Certificate[]): readonly KnownError[] =>
  all.map((certificate, index) => {
    const next = all[index + 1]?.date;
    return {
      isOn: (day) => day >= certificate.date && (next === undefined || day < next),
      at: (amount) =>
        certificate.uncertainty === undefined ? undefined : certifiedError(certificate, amount),
    };
  });

/** The largest error, as found or as left, without its sign; undefined where none is stated. */
export function worstError({ points }: Certificate, which: 'asFound' | 'asLeft'): Fraction | undefined {
  const all = points.flatMap((point) => point[which] ?? []);
  return all.length === 0 ? undefined : greatest(all.map(absolute));
}
