import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { BandName } from '../../documents/limits/bands.ts';
import { STEP } from '../../layout/family.ts';
import type { PositionLimits } from './limits.ts';
import { decidingLimits, type Judgement, SIDES } from './verdict.ts';

/** A position without a value is missing where a limit would decide; a step is never missing. */
export function missing(
  limits: PositionLimits,
  order: readonly BandName[],
  { family }: Characteristic,
): Judgement {
  const deciding = decidingLimits(limits.bands, order);
  // A limit that cannot be worked out here asks for the reading all the same.
  const isOpen = order.some((band) => SIDES.some((side) => limits.open.has(`${band} ${side}`)));
  const isWanted = family !== STEP && (isOpen || deciding.min !== undefined || deciding.max !== undefined);
  return {
    verdict: isWanted ? 'missing' : null,
    deciding,
    probability: null,
    marginal: false,
    past: undefined,
  };
}
