import type { Engine } from '../../documents/assemble.ts';
import type { ReadingBlock } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { shownBeyond } from '../../measurement/calibration/knownError.ts';
import { add, type Fraction } from '../../quantity/fraction.ts';

/** How much more a reading of a block shows than was there. */
export type BlockError = (amount: Fraction) => Fraction;

/**
 * What is known of the errors of a block's gauge and of what that was set with; undefined where nothing is. A gauge that
 * was zeroed in a micrometer locked at the journal shows the difference of the two: the micrometer's error is in neither.
 */
export function blockError(
  block: ReadingBlock,
  session: SessionDocument,
  { knownErrors }: Engine,
): BlockError | undefined {
  if (knownErrors.size === 0) return undefined;
  const { instrument, setWith, setTo, date: day = session.date } = block;
  const ofGauge = instrument && knownErrors.get(instrument.name);
  const ofSetter = setTo === 'journal' ? undefined : setWith && knownErrors.get(setWith.name);
  if (ofGauge === undefined && ofSetter === undefined) return undefined;
  return (amount) => {
    const setAt = typeof setTo === 'object' ? setTo : amount;
    return add(shownBeyond(ofGauge ?? [], amount, day), shownBeyond(ofSetter ?? [], setAt, day));
  };
}
