import { BAND_NAMES, type BandName } from '../../documents/limits/bands.ts';
import { add, divide, type Fraction, fraction, subtract } from '../../quantity/fraction.ts';
import { nearestTurn } from '../../quantity/turn.ts';
import type { PositionLimits } from './limits.ts';
import type { SidedLimits, SideLimit } from './sideLimit.ts';

/** The limits of what comes round again, each band in the turn in which its middle lies nearest a reading. */
export function turnedLimits(
  limits: PositionLimits,
  reading: Fraction,
  cycle: Fraction | undefined,
): PositionLimits {
  if (cycle === undefined) return limits;
  const bands: Partial<Record<BandName, SidedLimits>> = {};
  for (const name of BAND_NAMES) {
    const band = limits.bands[name];
    const middle = band && middleOf(band);
    if (band === undefined || middle === undefined) continue;
    const by = subtract(nearestTurn(middle, reading, cycle), middle);
    bands[name] = { min: moved(band.min, by), max: moved(band.max, by) };
  }
  return { ...limits, bands };
}

/** Of a limit on one side alone, itself. */
function middleOf({ min, max }: SidedLimits): Fraction | undefined {
  if (min === undefined || max === undefined) return (min ?? max)?.amount;
  return divide(add(min.amount, max.amount), fraction(2));
}

const moved = (limit: SideLimit | undefined, by: Fraction): SideLimit | undefined =>
  limit && { ...limit, amount: add(limit.amount, by) };
