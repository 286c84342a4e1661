import { didYouMean } from '../../diagnostic/suggestion.ts';
import { AXES } from '../../layout/axis.ts';
import { familyOf } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import { type DocumentContext, report } from '../amount.ts';
import { childOf, entriesOf, itemsOf, type Named, readNamed } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** What a part's positions are depends on the part, whose name is free: told is what is none of any. */
export function reportUnknownPartPositions(root: Node, layout: Layout, context: DocumentContext): void {
  const known = AXES.flatMap((axis) =>
    layout
      .positionsOf(familyOf(axis))
      .flatMap(({ name, label }) => [name, ...(label === undefined ? [] : [label])]),
  );
  for (const { name, span } of positionsIn(root)) {
    if (known.includes(name)) continue;
    const help = didYouMean(name, known) ?? 'write a position as the layout of the engine document has it';
    report(context, 'unknown-position', span, `the engine has no position ${name}`, help);
  }
}

const positionsIn = (root: Node): readonly Named[] => [
  ...['replaced', 'machined'].flatMap((how) =>
    itemsOf(childOf(root, how)).flatMap((item) => {
      const at = childOf(item, 'at');
      return (at?.kind === 'list' ? at.items : [at]).flatMap((each) => readNamed(each) ?? []);
    }),
  ),
  ...entriesOf(childOf(root, 'fitted')).flatMap(({ node }) =>
    entriesOf(childOf(node, 'at')).map(({ key, keySpan }) => ({ name: key, span: keySpan })),
  ),
];
