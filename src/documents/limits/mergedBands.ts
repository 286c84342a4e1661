import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { positionsWith } from '../../layout/readPart.ts';
import type { Measure, Measures } from '../measure.ts';
import type { LimitEntry } from './limitEntry.ts';
import type { LimitsDocument } from './limits.ts';
import { entriesIn } from './placedEntries.ts';
import { limitsInForce } from './precedence.ts';
import { tighterSides, WEAR_HELP } from './wearBand.ts';

/**
 * Wear limits tighter than the limits of new parts that only show when entries are put together: a position, or a
 * nearer document, sets one band and leaves the other. What one entry says alone was told when it was read.
 */
export const tighterWhenMerged = (
  documents: readonly LimitsDocument[],
  layout: Layout,
  measures: Measures,
): readonly Diagnostic[] =>
  [...new Set(documents.flatMap(({ limits }) => [...limits.keys()]))]
    .flatMap((id) => measures.find(id) ?? [])
    .flatMap((measure) => problemsOf(measure, documents, layout));

function problemsOf(
  measure: Measure,
  documents: readonly LimitsDocument[],
  layout: Layout,
): readonly Diagnostic[] {
  const stated = documents.flatMap(({ limits }) => limits.get(measure.id) ?? []);
  const entries = stated.flatMap(({ general, at }) => [general, ...at.map(({ entry }) => entry)]);
  const named = stated
    .flatMap((each) => entriesIn(each, layout, measure.family))
    .flatMap(({ coordinates }) => positionsWith(coordinates, measure.family, layout));
  // First what holds in general: where that is wrong no position has to repeat it.
  return [undefined, ...new Set(named)].flatMap((position) =>
    problemsAt(measure, position, documents, layout, entries),
  );
}

function problemsAt(
  measure: Measure,
  position: Position | undefined,
  documents: readonly LimitsDocument[],
  layout: Layout,
  entries: readonly LimitEntry[],
): readonly Diagnostic[] {
  const { bands } = limitsInForce(documents, layout, measure, position);
  const { new: fresh, wear } = bands;
  if (entries.some((each) => each.bands.new === fresh && each.bands.wear === wear)) return [];
  const of = position === undefined ? measure.id : `${measure.id} ${position.name}`;
  return tighterSides(fresh, wear).map(({ worn, other }) => {
    const { path, line, column } = other.place;
    const where = `${path}:${line}:${column}`;
    const message = `the wear limit ${worn.written} of ${of} is tighter than the ${other.written} of new parts (${where})`;
    return diagnostic('value', worn.place, message, WEAR_HELP);
  });
}
