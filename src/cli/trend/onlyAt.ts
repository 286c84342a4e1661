import type { Trend } from '../../compare/trend.ts';
import type { Engine } from '../../documents/assemble.ts';
import { findPosition } from '../../layout/readKey.ts';
import { notMeasuredAt } from '../shop/notMeasuredAt.ts';

/** What of a trend is about one position; all of it where none is asked for. */
export function onlyAt(found: Trend, position: string | undefined, engine: Engine): Trend {
  if (position === undefined) return found;
  const { family, id } = found.characteristic;
  const at = findPosition(engine.document.layout, family, position);
  const lines = found.lines.filter(({ row }) => row.position.key === at?.key);
  const corrected = found.past.corrected.filter(({ row }) => row.position.key === at?.key);
  if (lines.length > 0) return { ...found, lines, past: { ...found.past, corrected } };
  const known = [...new Set(found.lines.map(({ row }) => row.position.name))];
  throw notMeasuredAt(position, { id, family }, engine.document.layout, known);
}
