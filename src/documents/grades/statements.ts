import type { Place } from '../../diagnostic/place.ts';
import { type Part, wordsOf } from '../../layout/part.ts';
import type { PartAt } from '../../layout/readPart.ts';
import type { DocumentContext } from '../amount.ts';
import { atPositions, type KnownParts } from '../session/part.ts';
import { childOf, entriesOf, type Named, textAt, textOf } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';
import { type Grade, parseGrade } from './grade.ts';
import type { PartGrade } from './movement.ts';
import { reportNoSizes, sizedAmong, sizedWithin } from './sizedParts.ts';
import { reportWrongWay } from './way.ts';

/** What a document says of the size of a part from there on. */
export interface SizeStatement {
  /** A part that is made in service sizes, and where; with no positions all of it. */
  readonly at: PartAt;
  readonly grade: Partial<PartGrade>;
  /** Of one half alone, or of what is larger outside, the rest stays as it was. */
  readonly isWhole: boolean;
  /** Of a part that is fitted: what tells it from the one before. */
  readonly identity: string | undefined;
  readonly place: Place;
}

/** Parts that a document names, and the positions that are meant of them. */
export interface NamedParts {
  readonly name: Named;
  readonly named: readonly PartAt[];
  readonly at: readonly PartAt[];
}

/** Of a part that was replaced nothing is known but what is said here; one that was machined keeps its size until then. */
export function changedSizes(
  item: Node,
  how: 'replaced' | 'machined',
  about: NamedParts,
  known: KnownParts,
  context: DocumentContext,
): readonly SizeStatement[] {
  const grade = gradeAt(item, 'size', context);
  if (grade === undefined && how === 'machined') return [];
  const parts =
    grade === undefined ? sizedWithin(about.at, known) : sized({ ...about, grade }, known, context);
  const place = context.source.place(item.span);
  return parts.map((part) => stating(part, grade, place, true));
}

/** The mark, the size of all of it, those of places on it (`main: 0.010 under`), and then positions that differ. */
export function fittedSizes(
  node: Node,
  about: NamedParts,
  known: KnownParts,
  context: DocumentContext,
): readonly SizeStatement[] {
  const all = sizedWithin(about.named, known);
  const identity = ['mark', 'code'].flatMap((name) => textAt(node, name) ?? []).join(' ');
  const place = context.source.place(node.span);
  const [size, outside] = [gradeAt(node, 'size', context), gradeAt(node, 'outside', context)];
  return [
    ...(identity === '' ? [] : all.map((at) => ({ at, grade: {}, isWhole: false, identity, place }))),
    ...(size === undefined ? [] : sized({ ...about, grade: size }, known, context)).map((at) =>
      stating(at, size, place, true),
    ),
    ...(outside === undefined
      ? []
      : sized({ ...about, grade: outside }, known, context).map((at) => ({
          ...stating(at, undefined, place, false),
          grade: { outside },
        }))),
    ...entriesOf(node).flatMap((entry) => placeSizes(entry, all, known, context)),
    ...entriesOf(childOf(node, 'at')).flatMap((entry) => fittedAt(entry, about, known, context)),
  ];
}

/** Keys of a part that say something else than the size of a place on it. */
const OTHER_KEYS = ['mark', 'code', 'condition', 'size', 'outside', 'at', 'source', 'note'];

/** `main: 0.010 under` of a crankshaft: by the word for the part, or for the places where it is. */
function placeSizes(
  { key, keySpan, node }: Entry,
  all: readonly PartAt[],
  known: KnownParts,
  context: DocumentContext,
): readonly SizeStatement[] {
  if (OTHER_KEYS.includes(key)) return [];
  const grade = gradeOf(node, context);
  const name = key.replaceAll('_', ' ');
  const named = all.filter(({ part }) => part.family.name === name || wordsOf(part).includes(name));
  if (grade === undefined) return [];
  const about = { name: { name, span: keySpan }, named, at: named, grade };
  const place = context.source.place(node.span);
  return sized(about, known, context).map((at) => stating(at, grade, place, true));
}

/** `3: 0.010 under`, or `3: { lower: 0.011 under }`. */
function fittedAt(
  { key, keySpan, node }: Entry,
  about: NamedParts,
  known: KnownParts,
  context: DocumentContext,
): readonly SizeStatement[] {
  const size = textOf(node) === undefined ? gradeAt(node, 'size', context) : gradeOf(node, context);
  const sides = (['upper', 'lower', 'outside'] as const).flatMap((side) => {
    const grade = gradeAt(node, side, context);
    return grade === undefined ? [] : [[side, grade] as const];
  });
  const first = size ?? sides[0]?.[1];
  if (first === undefined) return [];
  const name: Named = { name: key, span: keySpan };
  const at = atPositions(about.named, [name], known, context);
  const place = context.source.place(node.span);
  return sized({ ...about, at, grade: first }, known, context).map((part) => {
    const whole = stating(part, size, place, size !== undefined);
    return { ...whole, grade: { ...whole.grade, ...Object.fromEntries(sides) } };
  });
}

interface Asked extends NamedParts {
  readonly grade: Grade;
}

/** Those of them that are made in sizes; told where none is. */
function sized(
  { name, named, at, grade }: Asked,
  known: KnownParts,
  context: DocumentContext,
): readonly PartAt[] {
  const found = sizedAmong(named, at, grade, known);
  if (found.length === 0 && at.length >= named.length) reportNoSizes(name, known, context);
  for (const { part } of found) if (reportWrongWay(part, grade, name.span, known.parts, context)) break;
  return found;
}

const stating = (at: PartAt, grade: Grade | undefined, place: Place, isWhole: boolean): SizeStatement => ({
  at,
  grade: grade === undefined ? {} : ofPart(at.part, grade),
  isWhole,
  identity: undefined,
  place,
});

/** A shell that is over standard is so outside: for a housing that was bored out. */
const ofPart = ({ sized: how }: Part, grade: Grade): Partial<PartGrade> =>
  how?.liesIn !== undefined && grade.by.n > 0n ? { outside: grade } : { upper: grade, lower: grade };

const gradeAt = (node: Node, key: string, context: DocumentContext): Grade | undefined =>
  gradeOf(childOf(node, key), context);

function gradeOf(node: Node | undefined, context: DocumentContext): Grade | undefined {
  const text = textOf(node);
  return node === undefined || text === undefined ? undefined : parseGrade(text, node.span, context);
}
