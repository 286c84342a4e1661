import type { Characteristic } from '../../../characteristics/characteristic.ts';
import type { Position } from '../../../layout/position.ts';
import { limitsOfFitted } from '../../grades/madeSize.ts';
import { limitsAt } from '../../judge/limits.ts';
import { type Range, statedRange } from '../plausibleSizes.ts';
import type { SlipContext } from '../slipContext.ts';

/** From the least to the greatest that limits of new or worn parts allow; undefined where they state none. */
export function allowed(
  of: Characteristic,
  position: Position,
  { view: { engine, session } }: SlipContext,
): Range | undefined {
  const { bands } = limitsAt(of, limitsOfFitted(engine, session, of, position), nothing, nothing);
  return bands.new === undefined && bands.wear === undefined ? undefined : statedRange(bands);
}

const nothing = (): undefined => undefined;
