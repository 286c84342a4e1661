import { childOf, entriesOf, itemsOf, textAt, textsOf } from './access.ts';
import type { Node } from './node.ts';

/** A part that is not the one it was before this session: what is measured of it from here on is another line. */
export interface PartChange {
  readonly how: 'replaced' | 'machined' | 'fitted';
  /** As written, such as `main shells`. */
  readonly part: string;
  /** As written; empty for all of them. */
  readonly positions: readonly string[];
  /** Of a fitted part: what tells it from another, empty where nothing does. */
  readonly identity: string;
  /** Said to be new or reground. */
  readonly isFresh: boolean;
}

/** `replaced: [{ part, at }]`, `machined: [{ part, at }]` and what the session says is fitted. */
export const readPartChanges = (root: Node): readonly PartChange[] => [
  ...(['replaced', 'machined'] as const).flatMap((how) =>
    itemsOf(childOf(root, how)).flatMap((item) => {
      const part = textAt(item, 'part');
      return part === undefined
        ? []
        : [{ how, part, positions: textsOf(childOf(item, 'at')), identity: '', isFresh: true }];
    }),
  ),
  ...entriesOf(childOf(root, 'fitted')).map(({ key, node }) => ({
    how: 'fitted' as const,
    part: key.replaceAll('_', ' '),
    positions: [],
    identity: ['mark', 'code', 'size'].flatMap((name) => textAt(node, name) ?? []).join(' '),
    isFresh: ['new', 'reground'].includes(textAt(node, 'condition') ?? ''),
  })),
];
