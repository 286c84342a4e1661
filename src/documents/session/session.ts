import { compareText, type Place } from '../../diagnostic/place.ts';
import { ENGINE, STEP } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import { WHOLE_ENGINE } from '../../layout/position.ts';
import { type Amount, type DocumentContext, readAmount, report } from '../amount.ts';
import { readDate } from '../date.ts';
import { checkPosition } from '../engine/checkPosition.ts';
import { type ReadingGrid, readStations } from '../engine/shop.ts';
import { readSizeStatements, type SizeStatement } from '../grades/statements.ts';
import { type Measure, type Measures, readMeasure } from '../measure.ts';
import { stemOf } from '../stem.ts';
import { type KnownSequences, readTightened, type TighteningLog } from '../tightening/tightened.ts';
import type { Named } from '../yaml/access.ts';
import { childOf, entriesOf, itemsOf, readNamed, textAt, textOf } from '../yaml/access.ts';
import type { Node, Span } from '../yaml/node.ts';
import { reportUnreadKeys } from './blockKeys.ts';
import { type InstrumentCheck, readCheck } from './checked.ts';
import { type Concession, readConcessions } from './concessions.ts';
import { type ImportedRows, readImported } from './imported.ts';
import { type PartChange, readPartChanges } from './partChanges.ts';
import { amountReader, setToOf } from './points.ts';
import type { PositionReading, ReadingBlock, WorkDone } from './reading.ts';
import { reportSamePosition } from './samePosition.ts';
import { type BlockShape, gridOf, readPosition, textList } from './shapes.ts';
import { STAGES, type Stage } from './stage.ts';
import { readStudy, type StudyDocument } from './study.ts';
import { readWork } from './workDone.ts';

export interface SessionDocument {
  /** The file's name without its ending. */
  readonly name: string;
  readonly path: string;
  readonly stage: Stage;
  readonly date: string;
  readonly by: string | undefined;
  readonly hours: Amount | undefined;
  readonly temperature: Amount | undefined;
  readonly blocks: readonly ReadingBlock[];
  readonly work: readonly WorkDone[];
  /** Earlier sessions whose readings stand in for what this one has not measured itself, by file name. */
  readonly uses: readonly Named[];
  /** Parts replaced, machined or fitted: they start new lines of a trend. */
  readonly partChanges: readonly PartChange[];
  readonly concessions: readonly Concession[];
  readonly study: StudyDocument | undefined;
  readonly checked: readonly InstrumentCheck[];
  /** The sizes that parts were made to, as the session says: they hold from there on. */
  readonly sizes: readonly SizeStatement[];
  readonly tightened: readonly TighteningLog[];
  /** Rows of spreadsheets that its readings came from, so that none comes in twice. */
  readonly imported: readonly ImportedRows[];
  readonly placeOf: (span: Span) => Place;
  /** Where to point for what the session does not hold. */
  readonly start: Place;
  /** Parts of the document that are valid and kept, and not judged by this version. */
  readonly kept: readonly string[];
}

export interface SessionContext {
  readonly measures: Measures;
  readonly layout: Layout;
  readonly grids: ReadonlyMap<string, ReadingGrid>;
  readonly sequences: KnownSequences;
}

/** By date; sessions of one day by their paths. */
export const compareSessions = (a: SessionDocument, b: SessionDocument): number =>
  compareText(a.date, b.date) || compareText(a.path, b.path);

const NOT_JUDGED_YET = ['found'];

export function readSession(root: Node, around: SessionContext, context: DocumentContext): SessionDocument {
  const items = itemsOf(childOf(root, 'readings'));
  const conditions = readConditions(root);
  return {
    name: stemOf(context.source.path),
    path: context.source.path,
    stage: STAGES.find((stage) => stage === textAt(root, 'stage')) ?? 'service',
    date: readDate(childOf(root, 'date'), context) ?? '',
    by: textAt(root, 'by'),
    hours: readAmount(childOf(root, 'hours'), 'time', context),
    temperature: readAmount(childOf(root, 'temperature'), 'temperature', context),
    blocks: items.flatMap((item, index) => readBlock(item, index, conditions, around, context) ?? []),
    study: readStudy(root, around.measures, context),
    concessions: readConcessions(root, around, context),
    uses: readUses(childOf(root, 'uses')),
    partChanges: readPartChanges(root, around.layout, context),
    tightened: readTightened(root, around.sequences, context),
    work: items.flatMap((item, index) => readWork(item, index, around, context)),
    checked: itemsOf(childOf(root, 'checked')).flatMap((item) => readCheck(item, context) ?? []),
    sizes: readSizeStatements(root, context),
    imported: readImported(root),
    placeOf: context.source.place,
    start: context.source.place(startOf(root)),
    kept: NOT_JUDGED_YET.filter((key) => childOf(root, key) !== undefined),
  };
}

const startOf = (root: Node): Span => {
  const { start } = (childOf(root, 'date') ?? root).span;
  return { start, end: start };
};

const readConditions = (node: Node): ReadonlyMap<string, string> =>
  new Map(entriesOf(childOf(node, 'conditions')).map(({ key, node: value }) => [key, textOf(value) ?? '']));

const readUses = (node: Node | undefined): readonly Named[] =>
  (node?.kind === 'list' ? node.items : [node]).flatMap((item) => readNamed(item) ?? []);

function readBlock(
  item: Node,
  index: number,
  conditions: ReadonlyMap<string, string>,
  around: SessionContext,
  context: DocumentContext,
): ReadingBlock | undefined {
  const measure = readMeasure(childOf(item, 'measure'), around.measures, context);
  if (measure === undefined) return undefined;
  reportUnreadKeys(item, measure, context);
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
    date: readDate(childOf(item, 'date'), context),
    temperature: readAmount(childOf(item, 'temperature'), 'temperature', context),
    conditions: new Map([...conditions, ...readConditions(item)]),
    positions: readPositions(item, `/readings/${index}`, shape, around.layout, context),
    span: (childOf(item, 'measure') ?? item).span,
  };
}

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

/** The grid that a shop states for a part, which its diameter is named after. */
export const shopGrid = ({ id }: Measure, grids: ReadonlyMap<string, ReadingGrid>): ReadingGrid | undefined =>
  grids.get(id) ?? grids.get(id.replace(/_[a-z0-9]+$/, ''));

function readPositions(
  item: Node,
  pointer: string,
  shape: BlockShape,
  layout: Layout,
  context: DocumentContext,
): readonly PositionReading[] {
  const { family, id } = shape.measure;
  const value = childOf(item, 'value');
  if (value !== undefined && family === ENGINE) {
    return one(readPosition(WHOLE_ENGINE, value, `${pointer}/value`, shape, context));
  }
  if (value !== undefined) {
    report(
      context,
      'value',
      value.span,
      `${id} is measured at a ${family.name}, and this says at none`,
      family === STEP ? 'write `after: [{ step: …, value: … }]`' : 'write `at: { 1: … }`',
    );
  }
  const steps = itemsOf(childOf(item, 'after')).map((step, index) =>
    readStep(step, `${pointer}/after/${index}`, shape, layout, context),
  );
  const positions = entriesOf(childOf(item, 'at'));
  reportSamePosition(positions, layout, family, context);
  const places = positions.map((entry) => {
    const position = checkPosition(entry, layout, family, context);
    if (position === undefined) return undefined;
    return readPosition(position, entry.node, `${pointer}/at/${entry.key}`, shape, context);
  });
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
  const step = name === undefined ? undefined : layout.at(STEP, [name]);
  const key = childOf(item, 'running') === undefined ? 'value' : 'running';
  // A step that was not read (`~`) keeps its place in the order.
  const value = childOf(item, key);
  if (step === undefined || value === undefined) return undefined;
  const reading = readPosition(step, value, `${pointer}/${key}`, shape, context);
  const note = textAt(item, 'note');
  return reading === undefined || note === undefined ? reading : { ...reading, notes: [note] };
}
