import type { Engine } from '../../documents/assemble.ts';
import { type PositionReading, pointsOf } from '../../documents/session/reading.ts';
import type { PlannedPoint } from '../points.ts';

/** What was read at the same point in the latest earlier session, as it was written. */
export function lastReading(point: PlannedPoint, engine: Engine, exceptName: string): string | undefined {
  const readings = engine.sessions
    .filter((session) => session.name !== exceptName)
    .flatMap((session) => session.blocks.filter((block) => block.measure.id === point.measure))
    .flatMap((block) => block.positions.filter((each) => each.position === point.position));
  return readings.map((reading) => readAt(reading, point)).findLast((written) => written !== undefined);
}

function readAt(reading: PositionReading, { station, direction }: PlannedPoint): string | undefined {
  const row = reading.stations.findIndex(({ name }) => name === station);
  const column = reading.directions.indexOf(direction);
  const same = reading.rows[row]?.[column]?.written;
  const all = pointsOf(reading);
  return same ?? (all.length === 1 ? all[0]?.written : undefined);
}
