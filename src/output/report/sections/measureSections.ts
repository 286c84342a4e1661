import { pastText, printingOf } from '../../../checks/findings/readings.ts';
import { type EngineReport, type StateReport, unitsFor } from '../../../checks/judge/report.ts';
import type { Row } from '../../../checks/judge/row.ts';
import type { Verdict } from '../../../checks/judge/verdict.ts';
import type { Unit } from '../../../quantity/units.ts';
import { byMeasure } from '../../check/byMeasure.ts';
import { hotNote } from '../../check/hotText.ts';
import { inPinOrder } from '../../check/pinGroups.ts';
import { quietMeasures, quietViews } from '../../check/view/quietView.ts';
import type { RowView } from '../../check/view/rowView.ts';
import { type TableView, tableViews } from '../../check/view/tableView.ts';
import {
  type Block,
  type MeasureBlock,
  type MeasureRow,
  type SheetSection,
  section,
  type Tone,
} from '../sheet.ts';
import { AREA_TITLES, areaOf } from './areas.ts';
import { bandOf } from './bandOf.ts';
import { partPictures } from './partPictures.ts';
import { turningPictures } from './turningPictures.ts';

/** Everything that was measured, in the order of the engine: what has something to say open, the rest folded. */
export function measureSections(report: EngineReport, state: StateReport): readonly SheetSection[] {
  const quiet = quietMeasures(state.rows, state.findings);
  const tables = tablesOf(report, state).map((table) => {
    const { characteristic, rows } = table;
    const isFolded =
      quiet.has(characteristic.id) && rows.every(({ hot, routes }) => hot === undefined && routes.length > 0);
    const folded = isFolded ? foldedText(rows, unitsFor(report.engine)) : undefined;
    const blocks: readonly Block[] = [
      { ...measureBlock(table, report, state, folded), pictures: partPictures(rows, report, state) },
      ...turningPictures(rows, report, state),
    ];
    return { area: areaOf(characteristic), blocks };
  });
  return AREA_TITLES.flatMap((title) =>
    section(title, ...tables.filter(({ area }) => area === title).map(({ blocks }) => blocks)),
  );
}

/** A table of `check` with the rows that its lines are of. */
interface Table {
  readonly view: TableView;
  readonly characteristic: Row['characteristic'];
  readonly rows: readonly Row[];
}

const tablesOf = ({ engine }: EngineReport, state: StateReport): readonly Table[] =>
  byMeasure(state.rows).flatMap((rows) => {
    const [first] = rows;
    const [view] = tableViews({ ...state, rows }, unitsFor(engine), false);
    if (first === undefined || view === undefined) return [];
    return [{ view, characteristic: first.characteristic, rows: inPinOrder(rows) }];
  });

const foldedText = (rows: readonly Row[], unitFor: (row: Row) => Unit): string =>
  quietViews(rows, unitFor)
    .map(({ name, range, word }) => `${name}: ${range}, ${word}`)
    .join('; ');

const measureBlock = (
  { view, rows }: Table,
  report: EngineReport,
  state: StateReport,
  folded: string | undefined,
): Omit<MeasureBlock, 'pictures'> => ({
  kind: 'measure',
  heading: view.heading,
  limits: view.limits,
  folded,
  rows: view.rows.flatMap((line, index) => {
    const row = rows[index];
    if (row === undefined) return [];
    const shown = measureRow(line, row, report, state);
    return [
      folded === undefined || row.characteristic.isAssemblyFigure === true ? shown : withoutPicture(shown),
    ];
  }),
});

/** Of a size with nothing to say the words are enough: a whole engine has hundreds, and the file stays small. */
const withoutPicture = (row: MeasureRow): MeasureRow => ({ ...row, picture: undefined });

function measureRow(line: RowView, row: Row, { engine }: EngineReport, state: StateReport): MeasureRow {
  const { where, verdict, near, limits, values, instead, group } = line;
  const [judged, ...others] = values;
  const printing = printingOf(row, unitsFor(engine));
  const reported = {
    title: [row.characteristic.label, where].filter(Boolean).join(' '),
    description: [judged?.reading, verdict, near].filter(Boolean).join(', '),
    distance: row.judgement.past === undefined ? '' : pastText(row, printing),
  };
  const was = judged?.notes.find((each) => each.startsWith('was '));
  return {
    measure: row.characteristic.id,
    position: [row.position.name, row.half ?? ''].join(' ').trim(),
    where: [group, where].filter(Boolean).join(': '),
    reading: judged?.reading ?? '',
    picture: judged && bandOf(row, state.before(row), judged.picture.openTo ?? 0, printing.unit, reported),
    verdict: [verdict, near].filter(Boolean).join(', '),
    tone: toneOf(row.judgement.verdict),
    before: was?.slice('was '.length) ?? instead,
    notes: [...(judged?.notes ?? []).filter((each) => each !== was), hotNote(row, printing), limits]
      .filter(Boolean)
      .join('; '),
    others: others.map(({ reading, agreement }) => [reading, agreement].filter(Boolean).join(', ')),
  };
}

const toneOf = (verdict: Verdict | null): Tone =>
  verdict === 'out' ? 'out' : verdict === null || verdict === 'ok' ? 'quiet' : 'notice';
