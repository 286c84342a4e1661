import type { Characteristic } from '../../characteristics/characteristic.ts';
import { limitsOfFitted } from '../../checks/grades/madeSize.ts';
import { limitsAt } from '../../checks/judge/limits.ts';
import type { SidedLimits } from '../../checks/judge/sideLimit.ts';
import type { Position } from '../../layout/position.ts';
import {
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  subtract,
  toNumber,
} from '../../quantity/fraction.ts';
import type { PlanContext } from '../work/context.ts';

/** What a fit is to come to: inside the limits of new parts, as near as can be to the middle of the target. */
export interface Wanted {
  readonly min: Fraction;
  readonly max: Fraction;
  readonly middle: Fraction;
}

/** How far the least and the greatest of what was measured lie from its mean. */
export interface Spread {
  readonly below: Fraction;
  readonly above: Fraction;
}

/** Undefined where limits of new parts are not stated on both sides. */
export function wantedAt(
  { engine, state }: PlanContext,
  characteristic: Characteristic,
  position: Position,
): Wanted | undefined {
  const inForce = limitsOfFitted(engine, state.session, characteristic, position);
  const { bands } = limitsAt(characteristic, inForce, nothing, nothing);
  const limits = bothSides(bands.new);
  if (limits === undefined) return undefined;
  return { ...limits, middle: middleOf(bothSides(bands.target) ?? limits) };
}

const nothing = (): undefined => undefined;

const bothSides = (band: SidedLimits | undefined): Omit<Wanted, 'middle'> | undefined =>
  band?.min === undefined || band.max === undefined
    ? undefined
    : { min: band.min.amount, max: band.max.amount };

export const middleOf = ({ min, max }: Omit<Wanted, 'middle'>): Fraction =>
  divide(add(min, max), fraction(2));

/** How far a fit lies from the middle, squared, in half widths of the band; undefined where any of it is outside. */
export function costOf(
  mean: Fraction,
  { below, above }: Spread,
  { min, max, middle }: Wanted,
): number | undefined {
  if (compare(subtract(mean, below), min) < 0 || compare(add(mean, above), max) > 0) return undefined;
  const halfWidth = toNumber(subtract(max, min)) / 2;
  return halfWidth === 0 ? 0 : (toNumber(subtract(mean, middle)) / halfWidth) ** 2;
}
