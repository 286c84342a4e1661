import type { InstrumentCheck } from '../../documents/session/checked.ts';
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
    const { calibrated } = registered ?? {};
    if (calibrated !== undefined) found.set(`certificate ${calibrated}`, certificate(calibrated));
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

const certificate = (day: string): Evidence => ({
  day,
  by: 'certificate',
  isGood: true,
  off: undefined,
  unit: undefined,
  lastDigit: undefined,
});

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
