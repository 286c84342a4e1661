import type { Layout } from '../../layout/layout.ts';
import type { DocumentContext } from '../amount.ts';
import { childOf, entriesOf, itemsOf, textAt, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { reportUnknownPartPositions } from './partPositions.ts';

export const CONDITIONS = ['new', 'used', 'reground'] as const;

export type Condition = (typeof CONDITIONS)[number];

/** A part that is not the one it was before this session: what is measured of it from here on is another line. */
export interface PartChange {
  readonly how: 'replaced' | 'machined' | 'fitted';
  /** As written, such as `main shells`. */
  readonly part: string;
  /** By name or label, as written; empty for all of them. */
  readonly positions: readonly string[];
  /** Of a fitted part: what tells it from another, empty where nothing does. */
  readonly identity: string;
  /** Said to be new or reground. */
  readonly isFresh: boolean;
  /** Of a fitted part, where it is stated; and at positions that differ from the rest, by the key as written. */
  readonly condition: Condition | undefined;
  readonly conditionAt: ReadonlyMap<string, Condition>;
}

const NO_CONDITION = { condition: undefined, conditionAt: new Map<string, Condition>() };

/** `replaced: [{ part, at }]`, `machined: [{ part, at }]` and what the session says is fitted. */
export function readPartChanges(root: Node, layout: Layout, context: DocumentContext): readonly PartChange[] {
  reportUnknownPartPositions(root, layout, context);
  return [...changedParts(root, 'replaced'), ...changedParts(root, 'machined'), ...fittedParts(root)];
}

const changedParts = (root: Node, how: 'replaced' | 'machined'): readonly PartChange[] =>
  itemsOf(childOf(root, how)).flatMap((item) => {
    const part = textAt(item, 'part');
    const positions = textsOf(childOf(item, 'at'));
    return part === undefined ? [] : [{ how, part, positions, identity: '', isFresh: true, ...NO_CONDITION }];
  });

const fittedParts = (root: Node): readonly PartChange[] =>
  entriesOf(childOf(root, 'fitted')).map(({ key, node }) => ({
    how: 'fitted' as const,
    part: key.replaceAll('_', ' '),
    positions: [],
    identity: ['mark', 'code', 'size'].flatMap((name) => textAt(node, name) ?? []).join(' '),
    isFresh: ['new', 'reground'].includes(conditionOf(node) ?? ''),
    condition: conditionOf(node),
    conditionAt: new Map(
      entriesOf(childOf(node, 'at')).flatMap((entry) => {
        const condition = conditionOf(entry.node);
        return condition === undefined ? [] : [[entry.key, condition] as const];
      }),
    ),
  }));

const conditionOf = (node: Node): Condition | undefined =>
  CONDITIONS.find((each) => each === textAt(node, 'condition'));
