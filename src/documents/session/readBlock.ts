import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { readDate } from '../date.ts';
import { checkPosition } from '../engine/checkPosition.ts';
import { readPlaces } from '../engine/places.ts';
import { type ReadingGrid, readStations } from '../engine/shop.ts';
import { type Measure, type Measures, readMeasure } from '../measure.ts';
import { childOf, entriesOf, itemsOf, readNamed, textAt, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { amountReader, setToOf } from './amountReader.ts';
import { reportUnreadKeys } from './blockKeys.ts';
import type { PositionReading, ReadingBlock } from './reading.ts';
import { readingForm } from './readingForm.ts';
import { type BlockShape, gridOf, readPosition, textList } from './shapes.ts';

/** What a block of readings is read by. */
export interface BlockContext {
  readonly measures: Measures;
  readonly layout: Layout;
  readonly grids: ReadonlyMap<string, ReadingGrid>;
}

export const readConditions = (node: Node): ReadonlyMap<string, string> =>
  new Map(entriesOf(childOf(node, 'conditions')).map(({ key, node: value }) => [key, textOf(value) ?? '']));

export function readBlock(
  item: Node,
  index: number,
  conditions: ReadonlyMap<string, string>,
  around: BlockContext,
  context: DocumentContext,
): ReadingBlock | undefined {
  const measure = readMeasure(childOf(item, 'measure'), around.measures, context);
  if (measure === undefined) return undefined;
  reportUnreadKeys(item, measure, around.layout, context);
  const shape: BlockShape = {
    measure,
    read: amountReader(item, measure, context),
    grid: blockGrid(item, measure, around.grids, context),
  };
  return {
    index,
    measure,
    instrument: readNamed(childOf(item, 'with')),
    setWith: readNamed(childOf(item, 'set_with')),
    setTo: setToOf(item, measure, context),
    from: textAt(item, 'from'),
    date: readDate(childOf(item, 'date'), context),
    temperature: readAmount(childOf(item, 'temperature'), 'temperature', context),
    supportedOn: readSupports(childOf(item, 'supported_on'), measure, around.layout, context),
    conditions: new Map([...conditions, ...readConditions(item)]),
    positions: withReason(
      readPositions(item, `/readings/${index}`, shape, around.layout, context),
      textAt(item, 'note'),
    ),
    span: (childOf(item, 'measure') ?? item).span,
  };
}

/** The note of a block in which nothing was read says why, for all that have no note of their own. */
function withReason(
  positions: readonly PositionReading[],
  note: string | undefined,
): readonly PositionReading[] {
  const isRead = positions.some(({ rows }) => rows.flat().some((point) => point !== undefined));
  if (isRead || note === undefined) return positions;
  return positions.map((each) => (each.notes.length > 0 ? each : { ...each, notes: [note] }));
}

const readSupports = (
  node: Node | undefined,
  { family }: Measure,
  layout: Layout,
  context: DocumentContext,
): readonly Position[] =>
  itemsOf(node).flatMap((item) => {
    const key = textOf(item);
    if (key === undefined) return [];
    return checkPosition({ key, keySpan: item.span }, layout, family, context) ?? [];
  });

function blockGrid(
  item: Node,
  measure: Measure,
  grids: ReadonlyMap<string, ReadingGrid>,
  context: DocumentContext,
): ReadingGrid {
  const [stations, directions] = [childOf(item, 'stations'), childOf(item, 'directions')];
  if (stations !== undefined || directions !== undefined) {
    return gridOf(readStations(stations, context), textList(directions));
  }
  return shopGrid(measure, grids) ?? gridOf([], []);
}

/** The grid that a shop states for a characteristic, or for all figures of its part. */
export const shopGrid = (
  { id, grid = id }: Measure,
  grids: ReadonlyMap<string, ReadingGrid>,
): ReadingGrid | undefined => grids.get(id) ?? grids.get(grid);

function readPositions(
  item: Node,
  pointer: string,
  shape: BlockShape,
  layout: Layout,
  context: DocumentContext,
): readonly PositionReading[] {
  const { family, id } = shape.measure;
  const value = childOf(item, 'value');
  const only = layout.only(family);
  if (value !== undefined && only !== undefined) {
    return one(readPosition(only, value, `${pointer}/value`, shape, context));
  }
  if (value !== undefined) {
    report(context, 'value', value.span, `${id} needs a ${family.name} position`, readingForm(family));
  }
  const steps = itemsOf(childOf(item, 'after')).map((step, index) =>
    readStep(step, `${pointer}/after/${index}`, shape, layout, context),
  );
  const places = readPlaces(childOf(item, 'at'), layout, family, context).map(({ position, node, path }) =>
    readPosition(position, node, [pointer, 'at', ...path].join('/'), shape, context),
  );
  return [...steps, ...places].flatMap((each) => each ?? []);
}

const one = (reading: PositionReading | undefined): readonly PositionReading[] =>
  reading === undefined ? [] : [reading];

/** `{ step: piston 1, value: 2.9 }`, or with `breakaway` and `running`, of which running is judged. */
function readStep(
  item: Node,
  pointer: string,
  shape: BlockShape,
  layout: Layout,
  context: DocumentContext,
): PositionReading | undefined {
  const name = textAt(item, 'step');
  const step = name === undefined ? undefined : layout.step(name);
  const key = childOf(item, 'running') === undefined ? 'value' : 'running';
  // A step that was not read (`~`) keeps its place in the order.
  const value = childOf(item, key);
  if (step === undefined || value === undefined) return undefined;
  const reading = readPosition(step, value, `${pointer}/${key}`, shape, context);
  const note = textAt(item, 'note');
  return reading === undefined || note === undefined ? reading : { ...reading, notes: [note] };
}
