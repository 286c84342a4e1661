import { didYouMean } from '../../diagnostic/suggestion.ts';
import type { Position } from '../../layout/position.ts';
import { STATION_WORDS } from '../../layout/reservedWords.ts';
import { nearestTurn } from '../../quantity/turn.ts';
import { type Amount, type DocumentContext, report } from '../amount.ts';
import type { ReadingGrid } from '../engine/shop.ts';
import type { Measure } from '../measure.ts';
import { itemsOf, textAt, textOf } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';
import { isPoint, POINT_KEYS, readPoint, stationsOf } from './points.ts';
import type { Point, PositionReading, ReadAmount, Station } from './reading.ts';

/** What gives the numbers at a position their meaning. */
export interface BlockShape {
  readonly measure: Measure;
  readonly read: ReadAmount;
  /** From the block, or else from the shop's grids. */
  readonly grid: ReadingGrid;
}

const UNNAMED: Station = {};

/** What stands at one position: a point, a list, a list of rows, or a map by station. */
export function readPosition(
  position: Position,
  node: Node,
  pointer: string,
  shape: BlockShape,
  context: DocumentContext,
): PositionReading | undefined {
  const read = inOneTurn(shape);
  const point = (each: Node, at: string): Point | undefined => readPoint(each, read, at, context);
  const base = { position, span: node.span, notes: notesOf(node) };
  if (isPoint(node)) {
    return { ...base, stations: [UNNAMED], directions: [undefined], rows: [[point(node, pointer)]] };
  }
  if (node.kind === 'map') {
    const entries = stationsOf(node);
    reportUnknownKeys(entries, shape.grid, context);
    const rows = entries.map(({ key, node: value }) => [point(value, `${pointer}/${key}`)]);
    return {
      ...base,
      stations: entries.map(({ key }) => stationNamed(key, shape.grid)),
      directions: [undefined],
      rows,
    };
  }
  const table = tableOf(node, shape, context);
  if (table === undefined) return undefined;
  const rows = table.cells.map((row) => row.map(({ node: cell, at }) => point(cell, `${pointer}/${at}`)));
  return { ...base, stations: table.stations, directions: table.directions, rows };
}

/** Of an angle that comes round again: what is read at one position lies in the turn of what was read there first. */
function inOneTurn({ read, measure: { cycle } }: BlockShape): ReadAmount {
  if (cycle === undefined) return read;
  let first: Amount | undefined;
  return (text, span) => {
    const amount = read(text, span);
    first ??= amount;
    return amount && first && { ...amount, amount: nearestTurn(amount.amount, first.amount, cycle) };
  };
}

/** Below a whole position stand readings, at stations that have a name; all else is misspelt. */
function reportUnknownKeys(entries: readonly Entry[], grid: ReadingGrid, context: DocumentContext): void {
  const stations = [...STATION_WORDS, ...grid.stations.flatMap(({ name }) => name ?? [])];
  for (const { key, keySpan } of entries) {
    if (stations.includes(key)) continue;
    const known = [...POINT_KEYS, ...stations];
    const help = didYouMean(key, known) ?? `it takes ${known.join(', ')}`;
    report(context, 'unknown-key', keySpan, `unknown key \`${key}\``, help);
  }
}

/** A station that the grid knows keeps its distance. */
const stationNamed = (name: string, grid: ReadingGrid): Station =>
  grid.stations.find((station) => station.name === name) ?? { name };

const notesOf = (node: Node): readonly string[] => [
  ...[textAt(node, 'note') ?? []].flat(),
  ...[...itemsOf(node), ...stationsOf(node).map((entry) => entry.node)].flatMap(notesOf),
];

interface Table {
  readonly stations: readonly Station[];
  readonly directions: readonly (string | undefined)[];
  readonly cells: readonly (readonly { readonly node: Node; readonly at: string }[])[];
}

function tableOf(node: Node, shape: BlockShape, context: DocumentContext): Table | undefined {
  const items = itemsOf(node);
  if (items.length === 0) {
    return report(
      context,
      'value',
      node.span,
      'an empty list holds no reading',
      'write ~ for a reading not taken',
    );
  }
  return items.some((item) => item.kind === 'list')
    ? tableOfRows(node, items, shape.grid, context)
    : tableOfList(node, items, shape, context);
}

/** Rows are stations, columns directions; each as long as its names. */
function tableOfRows(
  node: Node,
  items: readonly Node[],
  grid: ReadingGrid,
  context: DocumentContext,
): Table | undefined {
  const width = itemsOf(items[0]).length;
  const ragged = items.findIndex((item) => item.kind !== 'list' || item.items.length !== width);
  if (ragged >= 0) {
    const found = itemsOf(items[ragged]).length;
    const message = `row ${ragged + 1} has ${found} readings, the first has ${width}`;
    return report(
      context,
      'value',
      items[ragged]?.span ?? node.span,
      message,
      'write ~ for a reading not taken',
    );
  }
  const stations = namesFor(items.length, grid.stations, 'rows', 'stations', node, context);
  const directions = namesFor(width, grid.directions, 'columns', 'directions', node, context);
  if (stations === undefined || directions === undefined) return undefined;
  return {
    stations: stations.map((station) => station ?? UNNAMED),
    directions,
    cells: items.map((item, row) =>
      itemsOf(item).map((each, column) => ({ node: each, at: `${row}/${column}` })),
    ),
  };
}

/** As many names as there are rows or columns; one row or column needs none. */
function namesFor<T>(
  count: number,
  names: readonly T[],
  what: string,
  key: string,
  node: Node,
  context: DocumentContext,
): readonly (T | undefined)[] | undefined {
  if (names.length === count) return names;
  if (count === 1 && names.length === 0) return [undefined];
  return report(
    context,
    'value',
    node.span,
    names.length === 0
      ? `${count} ${what}, and nothing names them`
      : `${count} ${what}, and ${names.length} ${key} are named`,
    `name them in the block (${key}: [...]) or once in shop.yaml (grids:)`,
  );
}

function tableOfList(
  node: Node,
  items: readonly Node[],
  shape: BlockShape,
  context: DocumentContext,
): Table | undefined {
  const { stations, directions } = shape.grid;
  const cells = items.map((item, index) => ({ node: item, at: String(index) }));
  const column = (names: readonly Station[]): Table => ({
    stations: names,
    directions: [undefined],
    cells: cells.map((cell) => [cell]),
  });
  if (shape.measure.halves === true && items.length === 2)
    return column([{ name: 'upper' }, { name: 'lower' }]);
  if (items.length === stations.length) return column(stations);
  if (stations.length === 0 && items.length === directions.length) {
    return { stations: [UNNAMED], directions, cells: [cells] };
  }
  if (directions.length > 0 && items.length === stations.length * directions.length) {
    return {
      stations,
      directions,
      cells: stations.map((_, row) => cells.slice(row * directions.length, (row + 1) * directions.length)),
    };
  }
  if (items.length === 1) return column([UNNAMED]);
  return report(context, 'value', node.span, ...unnamedList(items.length, shape.grid));
}

function unnamedList(count: number, { stations, directions }: ReadingGrid): [string, string] {
  const names = [...stations.map((station) => station.name), ...directions];
  const help =
    names.length === 0
      ? 'name them: `stations: [front, rear]` or `directions: [...]` in the block, or `grids:` in shop.yaml'
      : 'write as many readings as names, ~ for one not taken; several of one point are { repeat: [...] }';
  const message =
    names.length === 0
      ? `${count} readings in a list: name the stations or directions`
      : `${count} readings in a list, and the names are ${names.join(', ')}`;
  return [message, help];
}

export const gridOf = (stations: readonly Station[], directions: readonly string[]): ReadingGrid => ({
  stations,
  directions,
});

export const textList = (node: Node | undefined): readonly string[] =>
  itemsOf(node).flatMap((item) => textOf(item) ?? []);
