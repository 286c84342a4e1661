import type { Family } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { type Coordinates, isComplete, noCoordinates, readKey } from '../../layout/readKey.ts';
import { type DocumentContext, report } from '../amount.ts';
import { entriesOf } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';
import { checkKey, reportIncomplete } from './checkPosition.ts';

/** What stands at a position under `at:`, and the keys that lead to it. */
export interface Placed {
  readonly position: Position;
  readonly node: Node;
  readonly path: readonly string[];
  readonly last: Entry;
}

/**
 * Everything under `at:` by its position: keys are coordinates until the family is complete. Reported is what names no
 * position, and a position that is written twice.
 */
export function readPlaces(
  at: Node | undefined,
  layout: Layout,
  family: Family,
  context: DocumentContext,
): readonly Placed[] {
  const places = placesIn(at, noCoordinates(family), [], {
    layout,
    family,
    coordinatesOf: (entry, known) => checkKey(entry, layout, family, known, context),
    incomplete: (entry, known) => reportIncomplete(entry, layout, family, known, context),
  });
  reportTwice(places, family, context);
  return places;
}

/** The same of a document that was read already. */
export const placesUnder = (at: Node | undefined, layout: Layout, family: Family): readonly Placed[] =>
  placesIn(at, noCoordinates(family), [], {
    layout,
    family,
    coordinatesOf: ({ key }, known) => {
      const meaning = readKey(layout, family, key, known);
      return meaning.kind === 'coordinates' ? meaning.coordinates : undefined;
    },
    incomplete: () => undefined,
  });

interface Around {
  readonly layout: Layout;
  readonly family: Family;
  readonly coordinatesOf: (entry: Entry, known: Coordinates) => Coordinates | undefined;
  readonly incomplete: (entry: Entry, known: Coordinates) => void;
}

const placesIn = (
  node: Node | undefined,
  known: Coordinates,
  path: readonly string[],
  around: Around,
): readonly Placed[] =>
  entriesOf(node).flatMap((entry) => {
    const { layout, family } = around;
    const coordinates = around.coordinatesOf(entry, known);
    if (coordinates === undefined) return [];
    const here = [...path, entry.key];
    if (isComplete(coordinates)) {
      const position = layout.at(family, coordinates);
      return position === undefined ? [] : [{ position, node: entry.node, path: here, last: entry }];
    }
    if (entry.node.kind === 'map') return placesIn(entry.node, coordinates, here, around);
    around.incomplete(entry, coordinates);
    return [];
  });

/** Two keys that name one position, such as `3` and its label: one of the two would be lost. */
function reportTwice(places: readonly Placed[], family: Family, context: DocumentContext): void {
  const paths = new Map<Position, string>();
  for (const { position, path, last } of places) {
    const [other, own] = [paths.get(position), path.join(' ')];
    if (other === undefined) {
      paths.set(position, own);
      continue;
    }
    const message = `${own} and ${other} are the same ${family.name}, ${position.name}`;
    report(context, 'duplicate-key', last.keySpan, message, 'keep the one that is meant');
  }
}
