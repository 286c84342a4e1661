import type { Place } from '../../diagnostic/place.ts';
import type { DocumentContext } from '../amount.ts';
import { childOf, entriesOf, itemsOf, textAt, textOf, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { type Grade, parseGrade, STANDARD } from './grade.ts';
import type { PartGrade } from './movement.ts';
import { SIZED_PARTS, type SizedPart } from './sizedParts.ts';

/** What a document says of the size of a part from there on. */
export interface SizeStatement {
  readonly part: SizedPart;
  /** By name or label, as written; empty for all positions. */
  readonly at: readonly string[];
  readonly grade: Partial<PartGrade>;
  /** Of one half alone, or of what is larger outside, the rest stays as it was. */
  readonly isWhole: boolean;
  /** Of a part that is fitted: what tells it from the one before. */
  readonly identity: string | undefined;
  readonly place: Place;
}

/** What was replaced and machined, then what is fitted: the last word on what is in the engine. */
export const readSizeStatements = (root: Node, context: DocumentContext): readonly SizeStatement[] => [
  ...['replaced', 'machined'].flatMap((how) =>
    itemsOf(childOf(root, how)).flatMap((item) => changedSizes(item, how, context)),
  ),
  ...fittedSizes(root, context),
];

/** Of a part that was replaced nothing is known but what is said here; one that was machined keeps its size until then. */
function changedSizes(item: Node, how: string, context: DocumentContext): readonly SizeStatement[] {
  const name = (textAt(item, 'part') ?? '').toLowerCase().replaceAll(' ', '_');
  const stated = gradeAt(item, 'size', context);
  if (stated === undefined && how === 'machined') return [];
  const at = textsOf(childOf(item, 'at'));
  return SIZED_PARTS.filter(({ names }) => names.includes(name)).map((part) => ({
    part,
    at,
    grade: stated === undefined ? {} : ofPart(part, stated),
    isWhole: true,
    identity: undefined,
    place: context.source.place(item.span),
  }));
}

const fittedSizes = (root: Node, context: DocumentContext): readonly SizeStatement[] =>
  entriesOf(childOf(root, 'fitted')).flatMap(({ key, node }) =>
    SIZED_PARTS.filter(({ keys }) => keys.some((each) => each.split(' ')[0] === key)).flatMap((part) => [
      ...fittedWhole(part, key, node, context),
      ...entriesOf(childOf(node, 'at')).flatMap((entry) => fittedAt(part, entry.key, entry.node, context)),
    ]),
  );

/** Its own size before that of all of it: `crankshaft: { size: std, main: 0.010 under }`. */
function fittedWhole(
  part: SizedPart,
  key: string,
  node: Node,
  context: DocumentContext,
): readonly SizeStatement[] {
  const own = part.keys.flatMap((each) => (each.startsWith(`${key} `) ? [each.slice(key.length + 1)] : []));
  const stated = [...own, 'size']
    .map((name) => gradeAt(node, name, context))
    .find((each) => each !== undefined);
  const identity = ['mark', 'code'].flatMap((name) => textAt(node, name) ?? []).join(' ');
  const outside = gradeAt(node, 'outside', context);
  const grade = { ...(stated === undefined ? {} : ofPart(part, stated)), ...(outside && { outside }) };
  if (identity === '' && Object.keys(grade).length === 0) return [];
  return [
    {
      part,
      at: [],
      grade,
      isWhole: stated !== undefined,
      identity: identity || undefined,
      place: context.source.place(node.span),
    },
  ];
}

/** `3: 0.010 under`, or `3: { lower: 0.011 under }`. */
function fittedAt(
  part: SizedPart,
  at: string,
  node: Node,
  context: DocumentContext,
): readonly SizeStatement[] {
  const text = textOf(node);
  const whole = text === undefined ? gradeAt(node, 'size', context) : parseGrade(text, node.span, context);
  const halves = Object.fromEntries(
    ['upper', 'lower', 'outside'].flatMap((name) => {
      const grade = gradeAt(node, name, context);
      return grade === undefined ? [] : [[name, grade] as const];
    }),
  );
  const grade = { ...(whole === undefined ? {} : ofPart(part, whole)), ...halves };
  if (Object.keys(grade).length === 0) return [];
  return [
    {
      part,
      at: [at],
      grade,
      isWhole: whole !== undefined,
      identity: undefined,
      place: context.source.place(node.span),
    },
  ];
}

/** A shell that is over standard is so outside: for a housing that was bored out. */
const ofPart = ({ isShell }: SizedPart, grade: Grade): PartGrade =>
  isShell === true && grade.by.n > 0n
    ? { upper: STANDARD, lower: STANDARD, outside: grade }
    : { upper: grade, lower: grade, outside: STANDARD };

function gradeAt(node: Node, key: string, context: DocumentContext): Grade | undefined {
  const child = childOf(node, key);
  const text = textOf(child);
  return child === undefined || text === undefined ? undefined : parseGrade(text, child.span, context);
}
