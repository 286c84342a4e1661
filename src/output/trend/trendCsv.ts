import { writtenCsv } from '../escape/csv.ts';
import type { Written } from '../escape/language.ts';
import type { trendJson } from './trendJson.ts';

/** A row a reading that is followed; a line is what no change of its part interrupts. */
export function trendCsv({ engine, measure, lines }: ReturnType<typeof trendJson>): Written {
  const rows = lines.flatMap(({ position, unit, followed, points }, index) =>
    points.map(({ x, value, u, session, date, commit }) => [
      ...[engine.path, engine.name, measure, position, index + 1, session, date, x, unit],
      ...[followed, value, u, commit ?? ''],
    ]),
  );
  return writtenCsv([COLUMNS, ...rows]);
}

const COLUMNS = [
  ...['engine', 'name', 'measure', 'position', 'line', 'session', 'date', 'x', 'unit'],
  ...['followed', 'value', 'u', 'commit'],
];
