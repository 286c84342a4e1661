import type { Place } from '../../diagnostic/place.ts';
import {
  type Point,
  type PositionReading,
  pointsOf,
  type ReadingBlock,
} from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';

/** One point of a block of readings: what is checked before anything is worked out from it. */
export interface ReadingPoint {
  readonly block: ReadingBlock;
  readonly reading: PositionReading;
  readonly point: Point;
}

/** Those of its points that are wanted. */
export const readingPointsOfBlock = (
  block: ReadingBlock,
  isWanted: (point: Point) => boolean,
): readonly ReadingPoint[] =>
  block.positions.flatMap((reading) =>
    pointsOf(reading)
      .filter(isWanted)
      .map((point) => ({ block, reading, point })),
  );

/** `, and 3 more in this block`: one block says one thing once. */
export const andMore = (count: number): string => (count === 0 ? '' : `, and ${count} more in this block`);

export const placeOfPoint = (session: SessionDocument, { point }: ReadingPoint): Place =>
  session.placeOf(point.span);
