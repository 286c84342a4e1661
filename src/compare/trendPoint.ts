import type { JudgedRoute, Row } from '../checks/judge/row.ts';
import type { SessionDocument } from '../documents/session/session.ts';
import type { LinePoint } from '../measurement/line.ts';
import { takenApart } from '../measurement/sharedErrors.ts';
import { standardUncertainty, type Value } from '../measurement/value.ts';
import { toNumber } from '../quantity/fraction.ts';
import { nearestTurn } from '../quantity/turn.ts';
import { levelWith } from './level.ts';

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

/** As warm as the latest reading of its line, and in its turn: the limit is that one's. */
export function pointOf(
  x: number,
  judged: JudgedRoute,
  followed: Followed,
  { row, session }: { readonly row: Row; readonly session: SessionDocument },
  latest: Row,
): TrendPoint {
  const value = judged.route.measured[followed];
  const level = levelWith(row, latest) ?? judged;
  const near = (latest.routes[0] ?? judged).mean;
  return {
    x,
    y: toNumber(nearestTurn(level[followed], near, row.characteristic.cycle)),
    terms: value.terms,
    u: standardUncertainty(value),
    row,
    session,
  };
}
