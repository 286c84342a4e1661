import type { Half } from '../documents/grades/movement.ts';
import type { Position } from '../layout/position.ts';
import type { Plan, PlannedBlock } from './plan.ts';

/** One place at which one number is read. */
export interface PlannedPoint {
  readonly measure: string;
  readonly position: Position;
  readonly station: string | undefined;
  readonly direction: string | undefined;
}

/** Which half of a pair of shells is read there. */
export const halfAt = ({ station }: PlannedPoint): Half | undefined =>
  station === 'upper' || station === 'lower' ? station : undefined;

/** The same for the same place, whatever plan it stands in. */
export const keyOf = ({ measure, position, station, direction }: PlannedPoint): string =>
  JSON.stringify([measure, position.key, station ?? '', direction ?? '']);

/** Position by position, each station by station, as a person goes round the part. */
export const pointsOfPlan = ({ blocks }: Plan): readonly PlannedPoint[] => blocks.flatMap(pointsOfBlock);

export const pointsOfBlock = (block: PlannedBlock): readonly PlannedPoint[] =>
  block.positions.flatMap((position) => rowsAt(block, position).flat());

/** The points of a position as the session writes them: a row a station, a column a direction. */
export const rowsAt = (
  { measure, grid }: PlannedBlock,
  position: Position,
): readonly (readonly PlannedPoint[])[] =>
  orNone(grid.stations).map((station) =>
    orNone(grid.directions).map((direction) => ({ measure, position, station, direction })),
  );

const orNone = (names: readonly string[]): readonly (string | undefined)[] =>
  names.length === 0 ? [undefined] : names;
