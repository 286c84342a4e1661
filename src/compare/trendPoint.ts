import type { JudgedRoute, Row } from '../checks/judge/row.ts';
import type { SessionDocument } from '../documents/session/session.ts';
import type { LinePoint } from '../measurement/line.ts';
import { takenApart } from '../measurement/sharedErrors.ts';
import { standardUncertainty, type Value } from '../measurement/value.ts';
import { toNumber } from '../quantity/fraction.ts';
import { nearestTurn } from '../quantity/turn.ts';

export interface TrendPoint {
  readonly x: number;
  /** In the base unit: the end of the readings that meets the limit. */
  readonly y: number;
  /** Sources of error of y, and its standard uncertainty. */
  readonly terms: Value['terms'];
  readonly u: number;
  readonly row: Row;
  readonly session: SessionDocument;
}

/** Which of a position's readings is followed: the one that meets the limit first. */
export type Followed = 'least' | 'mean' | 'greatest';

/** Each reading with its errors taken apart: what it alone is off by, and what another session's reading is off by as well. */
export function linePoints(points: readonly TrendPoint[]): readonly LinePoint[] {
  const errors = takenApart(points.map(({ terms }) => terms));
  return points.map(({ x, y }, index) => ({ x, y, ...errors[index] }));
}

export function pointOf(
  x: number,
  judged: JudgedRoute,
  followed: Followed,
  row: Row,
  session: SessionDocument,
  near = judged.mean,
): TrendPoint {
  const value = judged.route.measured[followed];
  return {
    x,
    y: toNumber(nearestTurn(judged[followed], near, row.characteristic.cycle)),
    terms: value.terms,
    u: standardUncertainty(value),
    row,
    session,
  };
}
