import type { BandName } from '../../documents/limits/bands.ts';
import type { PositionLimits } from './limits.ts';
import { SIDES } from './sideLimit.ts';
import type { Judgement } from './verdict.ts';

/** Nothing passes by a limit that could not be worked out, nor by a farther band in its place; what is out stays out. */
export function incompleteLimits(
  judgement: Judgement,
  { inForce, open }: PositionLimits,
  order: readonly BandName[],
): Judgement {
  if (open.size === 0 || judgement.verdict === 'out' || judgement.verdict === 'undecided') return judgement;
  const isOpen = SIDES.some((side) => {
    const band = order.find((each) => inForce.bands[each]?.[side] !== undefined);
    return band !== undefined && open.has(`${band} ${side}`);
  });
  return isOpen ? { ...judgement, verdict: null, past: undefined } : judgement;
}
