import type { RegisteredInstrument } from '../../documents/engine/instruments.ts';
import type { InstrumentCheck } from '../../documents/session/checked.ts';
import { type Certificate, worstError } from '../../measurement/calibration/certificate.ts';
import { largestErrorAt } from '../../measurement/instrument.ts';
import { absolute, compare, type Fraction, subtract } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import type { Judgeable } from '../state.ts';

/** What is known of an instrument on one day: by a certificate, or by a look at a standard. */
export interface Evidence {
  readonly day: string;
  readonly by: 'certificate' | 'check';
  /** Whether it was off by no more than its largest error; undefined where none is stated. */
  readonly isGood: boolean | undefined;
  /** Shown minus true, in the base unit, where a standard was read. */
  readonly off: Fraction | undefined;
  /** In which it was read. */
  readonly unit: Unit | undefined;
  /** One step of the last digit that was read. */
  readonly lastDigit: Fraction | undefined;
}

/** All that the documents of a shop know of an instrument, the earliest first. */
export function evidenceOf(name: string, engines: readonly Judgeable[]): readonly Evidence[] {
  const found = new Map<string, Evidence>();
  for (const { engine } of engines) {
    const registered = engine.instruments.get(name);
    for (const each of registered === undefined ? [] : certificatesOf(registered))
      found.set(`certificate ${each.day} ${each.when}`, each);
    for (const session of engine.sessions) {
      for (const check of session.checked) {
        if (check.instrument.name !== name) continue;
        const { path, line, column } = check.place;
        const largest = registered?.maxError && largestErrorAt(registered.maxError, check.standard.amount);
        const evidence = checkEvidence(check, check.date ?? session.date, largest);
        found.set(`${path}:${line}:${column}`, evidence);
      }
    }
  }
  return [...found.values()].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

interface CertificateEvidence extends Evidence {
  readonly when: 'asFound' | 'asLeft';
}

/** How each certificate found it, where it says so, and how it left it; of a day alone that it was good. */
function certificatesOf(of: RegisteredInstrument): readonly CertificateEvidence[] {
  const { certificates, calibrated } = of;
  const plain = { by: 'certificate' as const, unit: of.unit, lastDigit: of.resolution };
  if (certificates.length === 0)
    return calibrated === undefined
      ? []
      : [{ ...plain, day: calibrated, when: 'asLeft', isGood: true, off: undefined }];
  return certificates.flatMap((each) =>
    (['asFound', 'asLeft'] as const).flatMap((when) => {
      const off = worstError(each, when);
      if (off === undefined && when === 'asFound') return [];
      return [{ ...plain, day: each.date, when, off, isGood: isWithin(each, when, of) }];
    }),
  );
}

/** At every point; a certificate that states no errors says that it is good. */
function isWithin(
  { points }: Certificate,
  when: CertificateEvidence['when'],
  { maxError }: RegisteredInstrument,
): boolean | undefined {
  const stated = points.flatMap((point) => {
    const error = point[when];
    return error === undefined ? [] : [{ at: point.at, error }];
  });
  if (stated.length === 0) return true;
  if (maxError === undefined) return undefined;
  return stated.every(({ at, error }) => compare(absolute(error), largestErrorAt(maxError, at)) <= 0);
}

function checkEvidence(
  { standard, read }: InstrumentCheck,
  day: string,
  largest: Fraction | undefined,
): Evidence {
  const off = subtract(read.amount, standard.amount);
  const isGood = largest === undefined ? undefined : compare(absolute(off), largest) <= 0;
  return { day, by: 'check', isGood, off, unit: read.unit, lastDigit: read.lastDigit };
}

/** The days on which readings of an instrument may be wrong, and what says so. */
export interface SuspectDays {
  /** The last day on which it was known to be good; undefined where no document says that it ever was. */
  readonly lastGood: Evidence | undefined;
  readonly foundOff: Evidence | undefined;
  /** The day from which it was good again. */
  readonly goodAgain: Evidence | undefined;
  /** The first of those days, where there is one. */
  readonly from: string | undefined;
  readonly has: (day: string) => boolean;
}

/**
 * From when an instrument was last known to be good until it was good again. Readings of the first day count: it may have
 * gone off right after. So do those of the day on which it was found off.
 */
export function suspectDays(evidence: readonly Evidence[], asked?: string): SuspectDays {
  const off = evidence.findLastIndex(({ isGood }) => isGood === false);
  const before = off < 0 ? evidence : evidence.slice(0, off);
  const lastGood = before.findLast(({ isGood }) => isGood === true);
  const foundOff = evidence[off];
  const goodAgain = off < 0 ? undefined : evidence.slice(off + 1).find(({ isGood }) => isGood === true);
  const from = asked ?? lastGood?.day;
  return {
    lastGood,
    foundOff,
    goodAgain,
    from,
    has: (day) =>
      (from === undefined || day >= from) &&
      (goodAgain === undefined || day < goodAgain.day || day === foundOff?.day),
  };
}
