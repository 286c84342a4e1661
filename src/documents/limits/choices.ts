import type { Part, Parts } from '../../layout/part.ts';
import { wordsOf } from '../../layout/part.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import { type DocumentContext, parseAmount, readAmount, report } from '../amount.ts';
import { childOf, entriesOf, itemsOf, textAt, textOf } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';
import { printedRange } from './printedRange.ts';

/** How a maker has parts chosen: by what is stamped, and by what was measured. */
export interface Choices {
  readonly selectFits: readonly SelectFit[];
  readonly mixings: readonly HalfMixing[];
  readonly gaskets: readonly GasketBand[];
}

export interface Range {
  readonly least: Fraction;
  readonly greatest: Fraction;
}

/** The class of the shell above the journal, and of the one below it: of most makers the same. */
export interface HalfClasses {
  readonly upper: string;
  readonly lower: string;
}

/** `Blue above and Green below`. */
export const classText = ({ upper, lower }: HalfClasses): string =>
  upper === lower ? upper : `${upper} above and ${lower} below`;

/** A maker's table: the stamp of a housing, the stamp of its journal, and the classes of the shells that go between. */
export interface SelectFit {
  readonly part: Part;
  readonly table: ReadonlyMap<string, ReadonlyMap<string, HalfClasses>>;
  /** What the stamps stand for, where the maker says it. */
  readonly housings: ReadonlyMap<string, Range>;
  readonly journals: ReadonlyMap<string, Range>;
}

/** Halves of two thicknesses in one bearing. */
export interface HalfMixing {
  readonly part: Part;
  readonly differBy: Fraction;
  readonly thicker: 'upper' | 'lower';
}

/** A head gasket, and the greatest mean protrusion of a cylinder for which it is meant. */
export interface GasketBand {
  readonly code: string;
  readonly protrusion: Range;
  readonly thickness: Fraction | undefined;
}

export const NO_CHOICES: Choices = { selectFits: [], mixings: [], gaskets: [] };

export function readChoices(root: Node, parts: Parts, context: DocumentContext): Choices {
  return {
    selectFits: itemsOf(childOf(root, 'select_fit')).flatMap((item) => {
      const part = shellsCalled(childOf(item, 'fits'), parts, context);
      return part === undefined ? [] : [readSelectFit(item, part, context)];
    }),
    mixings: itemsOf(childOf(root, 'mixing')).flatMap((item) => readMixing(item, parts, context) ?? []),
    gaskets: itemsOf(childOf(root, 'gasket_choice')).flatMap((item) => readGasket(item, context) ?? []),
  };
}

const readSelectFit = (item: Node, part: Part, context: DocumentContext): SelectFit => ({
  part,
  table: new Map(entriesOf(childOf(item, 'table')).map((row) => [row.key, rowOf(row)] as const)),
  housings: rangesAt(item, 'housings', context),
  journals: rangesAt(item, 'journals', context),
});

const rowOf = ({ node }: Entry): ReadonlyMap<string, HalfClasses> =>
  new Map(entriesOf(node).map(({ key, node: cell }) => [key, classesIn(cell)] as const));

/** `E`, of both halves; or `{ upper: Blue, lower: Green }`. */
function classesIn(cell: Node): HalfClasses {
  const [upper, lower] = ['upper', 'lower'].map((half) => textOf(cell) ?? textAt(cell, half) ?? '');
  return { upper: upper ?? '', lower: lower ?? '' };
}

const rangesAt = (item: Node, key: string, context: DocumentContext): ReadonlyMap<string, Range> =>
  new Map(
    entriesOf(childOf(item, key)).flatMap(({ key: name, node }) => {
      const range = readRange(node, context);
      return range === undefined ? [] : [[name, range] as const];
    }),
  );

function readMixing(item: Node, parts: Parts, context: DocumentContext): HalfMixing | undefined {
  const part = shellsCalled(childOf(item, 'fits'), parts, context);
  const differBy = readAmount(childOf(item, 'differ_by'), 'length', context)?.amount;
  if (part === undefined || differBy === undefined) return undefined;
  return { part, differBy, thicker: textAt(item, 'thicker') === 'upper' ? 'upper' : 'lower' };
}

function readGasket(item: Node, context: DocumentContext): GasketBand | undefined {
  const protrusion = readRange(childOf(item, 'protrusion'), context);
  const thickness = readAmount(childOf(item, 'thickness'), 'length', context)?.amount;
  return protrusion && { code: textAt(item, 'code') ?? '', protrusion, thickness };
}

/** `0.705 to 0.755`. */
export function readRange(node: Node | undefined, context: DocumentContext): Range | undefined {
  const range = printedRange(node);
  if (node === undefined || range === undefined) return undefined;
  const [least, greatest] = range.map((text) => parseAmount(text, node.span, 'length', context)?.amount);
  return least === undefined || greatest === undefined ? undefined : { least, greatest };
}

/** A part that lies in a housing round a journal. */
export function shellsCalled(
  node: Node | undefined,
  parts: Parts,
  context: DocumentContext,
): Part | undefined {
  const word = textOf(node)?.replaceAll('_', ' ');
  if (node === undefined || word === undefined) return undefined;
  const shells = parts.all.filter(({ sized }) => sized?.liesIn !== undefined);
  const found = shells.find((part) => wordsOf(part).includes(word));
  if (found !== undefined) return found;
  const help = `it is one of ${shells.map(({ plural }) => plural).join(', ')}`;
  return report(context, 'value', node.span, `no shells are called ${word}`, help);
}
