import { characteristics } from '../../characteristics/registry.ts';
import { readLayout } from '../../documents/engine/readLayout.ts';
import { openDocument } from '../../documents/opened.ts';
import { MOST_BYTES } from '../../documents/yaml/bytes.ts';
import type { Family } from '../../layout/family.ts';
import { positionText } from '../../layout/naming.ts';
import { readBelow } from '../../shell/discover/safeRead.ts';
import type { Offer } from './offer.ts';

/** The positions of a characteristic on the engines of these documents; those of other words have none. */
export function positionNames(
  words: readonly string[],
  paths: readonly string[],
  root: string,
): readonly Offer[] {
  const family = characteristics.find(({ id }) => words.includes(id))?.family;
  if (family === undefined || family.isSingle) return [];
  const offers = paths.flatMap((path) => positionsIn(path, root, family));
  return [...new Map(offers.map((offer) => [offer.word, offer])).values()];
}

/** What cannot be read is reported by every other command. */
function positionsIn(path: string, root: string, family: Family): readonly Offer[] {
  const read = readBelow(root, path, MOST_BYTES);
  const opened = read.ok ? openDocument(path, path, read.value) : undefined;
  if (opened?.root === undefined) return [];
  const layout = readLayout(opened.root, { source: opened.source, units: new Map(), problems: [] });
  return layout
    .positionsOf(family)
    .map((position) => ({ word: position.name, means: positionText(position) }));
}
