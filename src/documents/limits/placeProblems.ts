import { diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Family } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import { keyOfCoordinates, spoken } from '../../layout/position.ts';
import { noCoordinates } from '../../layout/readKey.ts';
import { type DocumentContext, report } from '../amount.ts';
import { checkKey } from '../engine/checkPosition.ts';
import type { Measure } from '../measure.ts';
import { BAND_NAMES, type Band, type BandName } from './bands.ts';
import type { LimitEntry, MeasureLimits } from './limitEntry.ts';
import type { LimitsDocument } from './limits.ts';
import { countOf, type EntryAt, entriesIn, isAtCoordinates } from './placedEntries.ts';

/** What is wrong with where limits are said to hold, on one engine. */
export function reportPlaces(
  { isOwn }: Pick<LimitsDocument, 'isOwn'>,
  measure: Measure,
  limits: MeasureLimits,
  layout: Layout,
  context: DocumentContext,
): void {
  const { family } = measure;
  // Limits that serve several engines may name positions that this one has not.
  if (isOwn) reportNowhere(measure, limits, layout, context);
  if (isOwn) for (const { path } of limits.at) checkPath(path, layout, family, context);
  const entries = entriesIn(limits, layout, family);
  reportTwice(entries, family, context);
  reportEqual(entries, measure, layout, context);
}

/** An engine's own limits on what it has none of judge nothing. */
function reportNowhere(
  { id, family }: Measure,
  { key }: MeasureLimits,
  layout: Layout,
  context: DocumentContext,
): void {
  if (family.isNamedBySession || layout.positionsOf(family).length > 0) return;
  const message = `${id} is measured at a ${family.name}, and the engine has none`;
  const help = `name each ${family.axes.at(-1)} in the layout of the engine document, or leave these limits out`;
  report(context, 'unknown-position', key.keySpan, message, help);
}

function checkPath(path: EntryAt['path'], layout: Layout, family: Family, context: DocumentContext): void {
  let known = noCoordinates(family);
  for (const each of path) {
    const next = checkKey(each, layout, family, known, context);
    if (next === undefined) return;
    known = next;
  }
}

/** Two keys that name one place, such as `3` and its label: one of the two would be lost. */
function reportTwice(entries: readonly EntryAt[], family: Family, context: DocumentContext): void {
  const seen = new Map<string, string>();
  for (const { coordinates, path } of entries) {
    const [where, own] = [keyOfCoordinates(coordinates), path.map(({ key }) => key).join(' ')];
    const other = seen.get(where);
    if (other === undefined) seen.set(where, own);
    else {
      const name = coordinates.flatMap((each) => each ?? []).join(' ');
      const message = `${own} and ${other} are the same ${family.name}, ${name}`;
      const span = path.at(-1)?.keySpan ?? { start: 0, end: 0 };
      report(context, 'duplicate-key', span, message, 'keep the one that is meant');
    }
  }
}

/** A band for all top rings and one for cylinder 3: which of them its top ring has cannot be said. */
function reportEqual(
  entries: readonly EntryAt[],
  { id, family }: Measure,
  layout: Layout,
  context: DocumentContext,
): void {
  for (const [index, one] of entries.entries()) {
    for (const other of entries.slice(index + 1)) {
      if (countOf(one.coordinates) !== countOf(other.coordinates) || isOnePlace(one, other)) continue;
      const name = BAND_NAMES.find((each) => isUndecided(each, one, other, entries, layout, family));
      const place = name && placeOf(other.entry.bands[name]);
      if (place === undefined) continue;
      const [a, b] = [spoken(family, one.coordinates), spoken(family, other.coordinates)];
      const message = `the ${name} bands of ${id} at ${a} and at ${b} hold at the same positions`;
      const help = `write what holds there at both: at ${a} ${b}`;
      context.problems.push(diagnostic('limits-conflict', place, message, help));
    }
  }
}

/** Named twice, which is reported already. */
const isOnePlace = (one: EntryAt, other: EntryAt): boolean =>
  keyOfCoordinates(one.coordinates) === keyOfCoordinates(other.coordinates);

/** Whether both give a band that differs to a position to which nothing nearer gives one. */
function isUndecided(
  name: BandName,
  one: EntryAt,
  other: EntryAt,
  entries: readonly EntryAt[],
  layout: Layout,
  family: Family,
): boolean {
  const [a, b] = [one.entry.bands[name], other.entry.bands[name]];
  if (a === undefined || b === undefined || isSame(a, b)) return false;
  const gives = (entry: LimitEntry): boolean => entry.bands[name] !== undefined;
  return layout
    .positionsOf(family)
    .some(
      (position) =>
        isAtCoordinates(position, one.coordinates) &&
        isAtCoordinates(position, other.coordinates) &&
        !entries.some(
          ({ coordinates, entry }) =>
            countOf(coordinates) > countOf(one.coordinates) &&
            gives(entry) &&
            isAtCoordinates(position, coordinates),
        ),
    );
}

const isSame = (a: Band, b: Band): boolean =>
  a.min?.written === b.min?.written && a.max?.written === b.max?.written;

const placeOf = (band: Band | undefined) => band?.min?.place ?? band?.max?.place;
