import type { Row } from '../checks/judge/row.ts';
import type { Side, SideLimit } from '../checks/judge/sideLimit.ts';
import { compare, equals, type Fraction, fraction, multiply, subtract } from '../quantity/fraction.ts';
import { nearestTurn } from '../quantity/turn.ts';

/** How a value moved against the limit that it lies nearest to, before and after. */
export interface Movement {
  readonly toward: boolean;
  readonly side: Side;
  readonly limit: SideLimit;
  /** On one of the two sides it lies in the last quarter of the band before that limit, or nothing limits the other end. */
  readonly isNear: boolean;
}

/** Null where the two are not decided by one and the same limit, or the room to it did not change. */
export function movement(before: Row, after: Row): Movement | null {
  const [was, is] = [nearest(before), nearest(after)];
  if (was === undefined || is === undefined || was.side !== is.side) return null;
  const { cycle } = after.characteristic;
  if (!equals(nearestTurn(was.limit.amount, is.limit.amount, cycle), is.limit.amount)) return null;
  const order = compare(is.room, was.room);
  if (order === 0) return null;
  const least = order < 0 ? is.room : was.room;
  return { toward: order < 0, side: is.side, limit: is.limit, isNear: isNear(least, after) };
}

interface Nearest {
  readonly side: Side;
  readonly limit: SideLimit;
  /** How far inside it a row lies; negative beyond it. */
  readonly room: Fraction;
}

function nearest({ judgement: { deciding }, routes: [judged] }: Row): Nearest | undefined {
  if (judged === undefined) return undefined;
  const { min, max } = deciding;
  const above = max && { side: 'max' as const, limit: max, room: subtract(max.amount, judged.greatest) };
  const below = min && { side: 'min' as const, limit: min, room: subtract(judged.least, min.amount) };
  if (above === undefined || below === undefined) return above ?? below;
  return compare(above.room, below.room) <= 0 ? above : below;
}

function isNear(room: Fraction, { judgement: { deciding } }: Row): boolean {
  const { min, max } = deciding;
  if (min === undefined || max === undefined) return true;
  return compare(multiply(room, fraction(4)), subtract(max.amount, min.amount)) <= 0;
}
