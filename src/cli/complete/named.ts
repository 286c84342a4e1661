import { openDocument } from '../../documents/opened.ts';
import { childOf, entriesOf, textAt } from '../../documents/yaml/access.ts';
import { MOST_BYTES } from '../../documents/yaml/bytes.ts';
import type { Node } from '../../documents/yaml/node.ts';
import { discover } from '../../shell/discover/discover.ts';
import { kindOf } from '../../shell/discover/kindOf.ts';
import { shopRoot } from '../../shell/discover/root.ts';
import { readBelow } from '../../shell/discover/safeRead.ts';
import type { World } from '../../shell/world.ts';
import type { Offer } from './offer.ts';

/** Instruments of the shop's registers. */
export const instrumentNames = (world: World): readonly Offer[] =>
  offersIn(world, ['instruments'], (root) =>
    entriesOf(childOf(root, 'instruments')).map(({ key, node }) => ({
      word: key,
      means: textAt(node, 'type') ?? '',
    })),
  );

/** Marks of parts, with what the parts are. */
export const markNames = (world: World): readonly Offer[] =>
  offersIn(world, ['engine', 'session', 'part'], (root) => [
    ...marked(textAt(root, 'mark'), textAt(root, 'part') ?? ''),
    ...entriesOf(childOf(root, 'fitted')).flatMap(({ key, node }) => [
      ...marked(textAt(node, 'mark'), key),
      ...entriesOf(childOf(node, 'at')).flatMap((at) => marked(textAt(at.node, 'mark'), key)),
    ]),
  ]);

const marked = (word: string | undefined, part: string): readonly Offer[] =>
  word === undefined ? [] : [{ word, means: part.replaceAll('_', ' ') }];

/** What the documents of some kinds offer, each word once; what cannot be read is reported by every other command. */
function offersIn(
  { workingDirectory }: World,
  kinds: readonly string[],
  offers: (root: Node) => readonly Offer[],
): readonly Offer[] {
  const root = shopRoot(workingDirectory);
  const found = discover(root, ['.'])
    .paths.filter((path) => kinds.includes(kindOf(root, path) ?? ''))
    .flatMap((path) => {
      const read = readBelow(root, path, MOST_BYTES);
      const opened = read.ok ? openDocument(path, path, read.value) : undefined;
      return opened?.root === undefined ? [] : offers(opened.root);
    });
  return [...new Map(found.map((offer) => [offer.word, offer])).values()];
}
