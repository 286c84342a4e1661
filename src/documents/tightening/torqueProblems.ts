import { didYouMean } from '../../diagnostic/suggestion.ts';
import type { SequenceProblem } from '../../torque/sequenceProblems.ts';
import { type DocumentContext, report } from '../amount.ts';
import { childOf, itemsOf, textOf, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** Says of a sequence what keeps it from being carried out, each where it is written. */
export function reportSequenceProblems(
  problems: readonly SequenceProblem[],
  root: Node,
  passes: readonly Node[],
  context: DocumentContext,
): void {
  const fasteners = childOf(root, 'fasteners');
  const names = textsOf(childOf(fasteners, 'names'));
  for (const { message, pass, fastener } of problems) {
    const item = pass === undefined ? undefined : passes[pass - 1];
    const isUnknown = / is no fastener/.test(message);
    const node = placeOf(fastener, item ?? orderOrNames(message, root)) ?? item ?? fasteners ?? root;
    const help = isUnknown && fastener !== undefined ? didYouMean(fastener, names) : undefined;
    report(context, isUnknown ? 'unknown-position' : 'value', node.span, message, help);
  }
}

const orderOrNames = (message: string, root: Node): Node | undefined =>
  / order$| in the order /.test(message)
    ? childOf(root, 'order')
    : childOf(childOf(root, 'fasteners'), / of group | group$/.test(message) ? 'groups' : 'names');

/** The last place where a list inside the node names the fastener: of two, the second is the one too many. */
function placeOf(fastener: string | undefined, node: Node | undefined): Node | undefined {
  if (fastener === undefined || node === undefined) return node;
  const lists = node.kind === 'map' ? [...node.entries.values()].map((entry) => entry.node) : [node];
  return lists.flatMap(itemsOf).findLast((item) => textOf(item) === fastener) ?? node;
}
