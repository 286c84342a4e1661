import { type Characteristic, placesOf } from '../../characteristics/characteristic.ts';
import type { BandName } from '../../documents/limits/bands.ts';
import type { Measures } from '../../documents/measure.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import type { PositionLimits } from './limits.ts';
import { decidingLimits, SIDES } from './sideLimit.ts';
import type { Judgement } from './verdict.ts';

/** A position without a value is missing where a limit would decide; a step is never missing. */
export function missing(
  limits: PositionLimits,
  order: readonly BandName[],
  { family, quantity }: Characteristic,
): Judgement {
  const deciding = decidingLimits(limits.bands, order);
  // A limit that cannot be worked out here asks for the reading all the same.
  const isOpen = order.some((band) => SIDES.some((side) => limits.open.has(`${band} ${side}`)));
  const isLimited = isOpen || deciding.min !== undefined || deciding.max !== undefined;
  // A test needs no limits: what was tested in one place is wanted in all.
  const isWanted = !family.isNamedBySession && (isLimited || quantity === 'pass or fail');
  return {
    verdict: isWanted ? 'missing' : null,
    deciding,
    probability: null,
    marginal: false,
    past: undefined,
  };
}

/** The last of a row has no next: what a shop works out with the next lies nowhere there, and is not missing. */
export function canBeAt(
  { derivations }: Characteristic,
  position: Position,
  measures: Measures,
  layout: Layout,
): boolean {
  const placed = derivations.filter((each) => each.places !== undefined);
  return (
    placed.length === 0 || placed.some((each) => placesOf(each, measures, layout, position) !== undefined)
  );
}
