import type { Place } from '../../diagnostic/place.ts';
import type { Part, Parts } from '../../layout/part.ts';
import { add, divide, type Fraction, fraction, subtract } from '../../quantity/fraction.ts';
import { type Amount, type DocumentContext, readAmount } from '../amount.ts';
import { type Grade, parseGrade, STANDARD } from '../grades/grade.ts';
import { type Range, readRange, shellsCalled } from '../limits/choices.ts';
import { childOf, entriesOf, itemsOf, scalarOf, textAt, textOf, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** Parts on the shelf, of which some are promised to a job. */
export interface Stock {
  readonly shells: readonly StockShell[];
  readonly pistons: readonly StockPiston[];
  readonly washers: readonly StockSized[];
  readonly rings: readonly StockSized[];
  /** Head gaskets, liner shims and lash buckets: chosen by how thick they are. */
  readonly thicknesses: readonly StockThickness[];
}

interface Stocked {
  readonly code: string;
  readonly count: number;
  /** How many of them each job has. */
  readonly reserved: ReadonlyMap<string, number>;
  /** The engines that it fits, by name; none where it fits every one. */
  readonly engines: readonly string[];
  readonly place: Place;
}

/** One half; `wall` is its middle and `within` half of what it may differ by. */
export interface StockShell extends Stocked {
  readonly part: Part;
  readonly size: Grade;
  /** Its letter, number or colour in a maker's table. */
  readonly class: string | undefined;
  readonly wall: Fraction;
  readonly within: Fraction;
}

/** One piston, by its mark. */
export interface StockPiston extends Stocked {
  readonly size: Grade;
  readonly diameter: Amount;
  readonly weight: Amount | undefined;
  /** The cylinder that a used one ran in. */
  readonly ranIn: string | undefined;
}

export interface StockSized extends Stocked {
  readonly size: Grade;
}

export const THICKNESS_LISTS = ['gaskets', 'liner_shims', 'lash_buckets'] as const;

export type ThicknessList = (typeof THICKNESS_LISTS)[number];

export interface StockThickness extends Stocked {
  readonly list: ThicknessList;
  readonly thickness: Amount;
}

export const NO_STOCK: Stock = { shells: [], pistons: [], washers: [], rings: [], thicknesses: [] };

export function readStock(root: Node, parts: Parts, context: DocumentContext): Stock {
  const each = <T>(key: string, read: (item: Node) => T | undefined): readonly T[] =>
    itemsOf(childOf(root, key)).flatMap((item) => read(item) ?? []);
  const sized = (item: Node): StockSized => ({ ...stocked(item, context), size: sizeOf(item, context) });
  return {
    shells: each('shells', (item) => readShell(item, parts, context)),
    pistons: each('pistons', (item) => readPiston(item, context)),
    washers: each('thrust_washers', sized),
    rings: each('rings', sized),
    thicknesses: THICKNESS_LISTS.flatMap((list) =>
      each(list, (item) => {
        const thickness = readAmount(childOf(item, 'thickness'), 'length', context);
        return thickness && { ...stocked(item, context), list, thickness };
      }),
    ),
  };
}

/** All of a shop's shelves as one. */
export const stockOf = (documents: readonly Stock[]): Stock => ({
  shells: documents.flatMap(({ shells }) => shells),
  pistons: documents.flatMap(({ pistons }) => pistons),
  washers: documents.flatMap(({ washers }) => washers),
  rings: documents.flatMap(({ rings }) => rings),
  thicknesses: documents.flatMap(({ thicknesses }) => thicknesses),
});

function readShell(item: Node, parts: Parts, context: DocumentContext): StockShell | undefined {
  const part = shellsCalled(childOf(item, 'fits'), parts, context);
  const wall = readWall(childOf(item, 'wall'), context);
  if (part === undefined || wall === undefined) return undefined;
  const { least, greatest } = wall;
  return {
    ...stocked(item, context),
    part,
    size: sizeOf(item, context),
    class: textAt(item, 'class'),
    wall: half(add(least, greatest)),
    within: half(subtract(greatest, least)),
  };
}

const half = (of: Fraction): Fraction => divide(of, fraction(2));

/** `0.0980 to 0.0982`, as its maker sells it, or as it was measured. */
function readWall(node: Node | undefined, context: DocumentContext): Range | undefined {
  if (/ to /.test(textOf(node) ?? '')) return readRange(node, context);
  const wall = readAmount(node, 'length', context)?.amount;
  return wall && { least: wall, greatest: wall };
}

function readPiston(item: Node, context: DocumentContext): StockPiston | undefined {
  const diameter = readAmount(childOf(item, 'diameter'), 'length', context);
  const weight = readAmount(childOf(item, 'weight'), 'mass', context);
  const ranIn = textAt(item, 'ran_in');
  return diameter && { ...stocked(item, context), size: sizeOf(item, context), diameter, weight, ranIn };
}

function sizeOf(item: Node, context: DocumentContext): Grade {
  const node = childOf(item, 'size');
  return (node && parseGrade(textOf(node) ?? '', node.span, context)) ?? STANDARD;
}

function stocked(item: Node, context: DocumentContext): Stocked {
  const count = scalarOf(childOf(item, 'count'))?.value;
  return {
    code: textAt(item, 'mark') ?? textAt(item, 'code') ?? '',
    count: typeof count === 'number' ? count : 1,
    reserved: readReserved(childOf(item, 'reserved')),
    engines: textsOf(childOf(item, 'for')),
    place: context.source.place(item.span),
  };
}

/** `{ 2417: 4 }`; of a single piece the job alone. */
function readReserved(node: Node | undefined): ReadonlyMap<string, number> {
  const job = textOf(node);
  if (job !== undefined) return new Map([[job, 1]]);
  return new Map(
    entriesOf(node).map(({ key, node: value }) => {
      const count = scalarOf(value)?.value;
      return [key, typeof count === 'number' ? count : 0] as const;
    }),
  );
}

/** What is left of it for an engine, by any of its names: what other jobs have is not offered. */
export function freeFor(
  { count, reserved, engines }: Stocked,
  job: readonly string[],
  names: readonly string[],
): number {
  if (engines.length > 0 && !engines.some((each) => names.includes(each))) return 0;
  const taken = [...reserved].reduce((sum, [by, some]) => (job.includes(by) ? sum : sum + some), 0);
  return Math.max(0, count - taken);
}
