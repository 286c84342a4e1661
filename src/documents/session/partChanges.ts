import type { Place } from '../../diagnostic/place.ts';
import { cutAlone, type PartAt } from '../../layout/readPart.ts';
import type { DocumentContext } from '../amount.ts';
import { changedSizes, fittedSizes, type SizeStatement } from '../grades/statements.ts';
import { childOf, entriesOf, itemsOf, namesAt, readNamed, textAt, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { atPositions, type KnownParts, readParts } from './part.ts';

export const CONDITIONS = ['new', 'used', 'reground'] as const;

export type Condition = (typeof CONDITIONS)[number];

/** A part that is not the one it was before this session: what is measured of it from here on is another line. */
export interface PartChange {
  /** A part of the shelf is tried in a plan: it takes the place of another, and nothing says that it is new. */
  readonly how: 'replaced' | 'machined' | 'fitted' | 'tried';
  /** As written, such as `main shells`. */
  readonly name: string;
  /** The parts it names, and where; none for a part that only the shop knows. */
  readonly parts: readonly PartAt[];
  /** Of a fitted part: what tells it from another, by its key; empty where nothing does. */
  readonly identity: ReadonlyMap<string, string>;
  /** Of a fitted part, where it is stated; and where it differs from the rest. */
  readonly condition: Condition | undefined;
  readonly conditionAt: readonly (PartAt & { readonly condition: Condition })[];
  /** What it says of the size that the part was made to. */
  readonly sizes: readonly SizeStatement[];
  /** Of a fitted part what is stamped on it, and on those of its positions that have marks of their own. */
  readonly mark: string | undefined;
  readonly marksAt: readonly MarkAt[];
  /** Of a fitted part its code, and after it those of its positions that have codes of their own. */
  readonly codesAt: readonly CodeAt[];
  readonly place: Place;
}

export interface MarkAt {
  readonly mark: string;
  readonly parts: readonly PartAt[];
}

export interface CodeAt {
  readonly code: string;
  readonly parts: readonly PartAt[];
}

/** `replaced: [{ part, at }]`, `machined: [{ part, at }]` and what the session says is fitted. */
export const readPartChanges = (
  root: Node,
  known: KnownParts,
  context: DocumentContext,
): readonly PartChange[] => [
  ...changedParts(root, 'replaced', known, context),
  ...changedParts(root, 'machined', known, context),
  ...fittedParts(root, known, context),
];

const changedParts = (
  root: Node,
  how: 'replaced' | 'machined',
  known: KnownParts,
  context: DocumentContext,
): readonly PartChange[] =>
  itemsOf(childOf(root, how)).flatMap((item) => {
    const named = readNamed(childOf(item, 'part'));
    if (named === undefined) return [];
    const all = readParts(named, known, context);
    const placed = atPositions(all, namesAt(item, 'at'), known, context);
    const parts = how === 'machined' ? placed.map(cutAlone) : placed;
    const about = { name: named, named: all, at: parts };
    return [
      {
        how,
        name: named.name,
        parts,
        identity: new Map(),
        condition: undefined,
        conditionAt: [],
        sizes: changedSizes(item, how, about, known, context),
        mark: undefined,
        marksAt: [],
        codesAt: [],
        place: context.source.place(named.span),
      },
    ];
  });

const fittedParts = (root: Node, known: KnownParts, context: DocumentContext): readonly PartChange[] =>
  entriesOf(childOf(root, 'fitted')).map(({ key, keySpan, node }) => {
    const name = { name: key, span: keySpan };
    const parts = readParts(name, known, context);
    const condition = conditionOf(node);
    const places = entriesOf(childOf(node, 'at')).map((entry) => ({
      node: entry.node,
      at: atPositions(parts, [{ name: entry.key, span: entry.keySpan }], known, context),
    }));
    return {
      how: 'fitted' as const,
      name: key.replaceAll('_', ' '),
      parts,
      identity: identityOf(node),
      condition,
      conditionAt: places.flatMap(({ at, node: own }) => {
        const its = conditionOf(own);
        return its === undefined ? [] : at.map((each) => ({ ...each, condition: its }));
      }),
      sizes: fittedSizes(node, { name, named: parts, at: parts }, known, context),
      mark: textAt(node, 'mark'),
      marksAt: places.flatMap(({ at, node: own }) => {
        const mark = textAt(own, 'mark');
        return mark === undefined || at.length === 0 ? [] : [{ mark, parts: at }];
      }),
      codesAt: [{ node, at: parts }, ...places].flatMap(({ at, node: own }) => {
        const code = textAt(own, 'code');
        return code === undefined ? [] : [{ code, parts: at }];
      }),
      place: context.source.place(keySpan),
    };
  });

/** What a fitted part is said to be at a place: what is said of that place before what is said of all. */
export const conditionWhere = (
  { condition, conditionAt }: PartChange,
  isHere: (part: PartAt) => boolean,
): Condition | undefined => conditionAt.find(isHere)?.condition ?? condition;

/** Whether it makes the part at a place another one: by work, by renewal, or as one that is new or reground. */
export const isFreshWhere = (change: PartChange, isHere: (part: PartAt) => boolean): boolean =>
  change.how !== 'fitted' || ['new', 'reground'].includes(conditionWhere(change, isHere) ?? '');

const conditionOf = (node: Node): Condition | undefined =>
  CONDITIONS.find((each) => each === textAt(node, 'condition'));

/** What is stamped on it and the sizes it was made to: of a crankshaft also that of its mains. */
const identityOf = (node: Node): ReadonlyMap<string, string> =>
  new Map(
    entriesOf(node).flatMap(({ key, node: value }) => {
      const text = NO_IDENTITY.includes(key) ? undefined : textOf(value);
      return text === undefined ? [] : [[key, text] as const];
    }),
  );

const NO_IDENTITY = ['condition', 'source', 'note'];
