import type { Layout } from '../../layout/layout.ts';
import type { Part, Parts } from '../../layout/part.ts';
import { wordsOf } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { type DocumentContext, report } from '../amount.ts';
import { childOf, entriesOf, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { checkPosition } from './checkPosition.ts';

/** What its maker stamped on the parts of an engine, by the part's id. */
export type Stamps = ReadonlyMap<string, ReadonlyMap<Position, string>>;

/** `stamps: { main journals: { 1: A, 2: B } }`. */
export const readStamps = (
  root: Node,
  { parts, layout }: { readonly parts: Parts; readonly layout: Layout },
  context: DocumentContext,
): Stamps =>
  new Map(
    entriesOf(childOf(root, 'stamps')).flatMap(({ key, keySpan, node }) => {
      const part = partCalled(key, parts);
      if (part === undefined) {
        const help = 'such as main journals, main housings, crankpins, rod housings';
        report(context, 'value', keySpan, `no part is called ${key.replaceAll('_', ' ')}`, help);
        return [];
      }
      const marks = entriesOf(node).flatMap((entry) => {
        const position = checkPosition(entry, layout, part.family, context);
        return position === undefined ? [] : [[position, textOf(entry.node) ?? ''] as const];
      });
      return [[part.id, new Map(marks)] as const];
    }),
  );

const partCalled = (key: string, { all }: Parts): Part | undefined =>
  all.find((part) => wordsOf(part).includes(key.replaceAll('_', ' ')));
