import { didYouMean, nearest } from '../../diagnostic/suggestion.ts';
import type { Family } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { type Coordinates, noCoordinates, readKey } from '../../layout/readKey.ts';
import { LIMIT_WORDS } from '../../layout/reservedWords.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Measure } from '../measure.ts';
import { childOf, entriesOf } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';
import type { LimitEntry, MeasureLimits, PlacedEntry } from './limitEntry.ts';

/** What stands in a document or in a limit, and not at a position of its own. */
const NOT_AT_A_PLACE: readonly string[] = ['at', 'from'];

const WORDS: readonly string[] = [...LIMIT_WORDS, 'note'].filter((word) => !NOT_AT_A_PLACE.includes(word));

/** Every entry under `at:`: at some coordinates, and deeper in at more of them. */
export function placedEntries(
  node: Node,
  { family }: Measure,
  entryOf: (node: Node) => LimitEntry,
  context: DocumentContext,
): readonly PlacedEntry[] {
  const below = (at: Node | undefined, path: readonly Entry[]): readonly PlacedEntry[] =>
    entriesOf(at).flatMap((each) => {
      if (path.length > 0 && WORDS.includes(each.key)) return [];
      if (!isPlace(each, path, family)) return reportUnknown(each, context);
      const here = [...path, each];
      const inside = below(each.node, here);
      const states = entriesOf(each.node).some(({ key }) => WORDS.includes(key)) || inside.length === 0;
      return states ? [{ path: here, entry: entryOf(each.node) }, ...inside] : inside;
    });
  return below(childOf(node, 'at'), []);
}

/** A misspelt band is none: it would pass for a position that another engine has. */
const isPlace = ({ key, node }: Entry, path: readonly Entry[], { axes }: Family): boolean =>
  node.kind === 'map' &&
  path.length < axes.length &&
  (path.length === 0 || (nearest(key, WORDS) === undefined && !NOT_AT_A_PLACE.includes(key)));

function reportUnknown({ key, keySpan }: Entry, context: DocumentContext): readonly [] {
  const help = didYouMean(key, WORDS) ?? 'it takes target, new, wear, temperature, source and note';
  report(context, 'unknown-key', keySpan, `unknown key \`${key}\``, help);
  return [];
}

/** An entry with the coordinates that its keys have in a layout. */
export interface EntryAt {
  readonly coordinates: Coordinates;
  readonly path: readonly Entry[];
  readonly entry: LimitEntry;
}

const memory = new WeakMap<MeasureLimits, WeakMap<Layout, readonly EntryAt[]>>();

/** Those that name something of this engine, what says most of where first. */
export function entriesIn(limits: MeasureLimits, layout: Layout, family: Family): readonly EntryAt[] {
  const known = memory.get(limits) ?? new WeakMap<Layout, readonly EntryAt[]>();
  memory.set(limits, known);
  const found =
    known.get(layout) ??
    limits.at
      .flatMap(({ path, entry }) => {
        const coordinates = coordinatesOf(path, layout, family);
        return coordinates === undefined ? [] : [{ coordinates, path, entry }];
      })
      .sort((a, b) => countOf(b.coordinates) - countOf(a.coordinates));
  known.set(layout, found);
  return found;
}

function coordinatesOf(path: readonly Entry[], layout: Layout, family: Family): Coordinates | undefined {
  let known = noCoordinates(family);
  for (const { key } of path) {
    const meaning = readKey(layout, family, key, known);
    if (meaning.kind !== 'coordinates') return undefined;
    known = meaning.coordinates;
  }
  return known;
}

export const countOf = (coordinates: Coordinates): number =>
  coordinates.filter((name) => name !== undefined).length;

export const isAtCoordinates = (position: Position, coordinates: Coordinates): boolean =>
  coordinates.every((name, index) => name === undefined || name === position.coordinates[index]);

/** As messages say where: by the names of the layout, else as it is written. */
export const placeName = (path: readonly Entry[], layout: Layout, family: Family): string =>
  (coordinatesOf(path, layout, family) ?? path.map(({ key }) => key)).flatMap((name) => name ?? []).join(' ');
