import { pastText, printingOf } from '../../../checks/findings/readings.ts';
import { type EngineReport, type StateReport, unitsFor } from '../../../checks/judge/report.ts';
import type { Row } from '../../../checks/judge/row.ts';
import type { Verdict } from '../../../checks/judge/verdict.ts';
import type { Unit } from '../../../quantity/units.ts';
import { quietMeasures, quietViews } from '../../check/view/quietView.ts';
import { extentOf } from '../../check/view/rowPicture.ts';
import type { RowView } from '../../check/view/rowView.ts';
import { type TableView, tableRows, tableView } from '../../check/view/tableView.ts';
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
  const unitFor = unitsFor(report.engine);
  const quiet = quietMeasures(state.rows, state.findings);
  const blocks = tableRows(state).flatMap((rows) => {
    const [first] = rows;
    const view = tableView(rows, state, unitFor, false);
    if (first === undefined || view === undefined) return [];
    const { characteristic } = first;
    const folded = quiet.has(characteristic.id) ? foldedText(rows, unitFor) : undefined;
    return [
      {
        area: areaOf(characteristic),
        blocks: [
          {
            ...measureBlock(view, rows, state, unitFor, folded),
            pictures: partPictures(rows, report, state),
          },
          ...turningPictures(rows, report, state),
        ] satisfies readonly Block[],
      },
    ];
  });
  return AREA_TITLES.flatMap((title) =>
    section(title, ...blocks.filter(({ area }) => area === title).map((each) => each.blocks)),
  );
}

const foldedText = (rows: readonly Row[], unitFor: (row: Row) => Unit): string =>
  quietViews(rows, unitFor)
    .map(({ name, range, word }) => `${name}: ${range}, ${word}`)
    .join('; ');

function measureBlock(
  { heading, limits, rows: views }: TableView,
  rows: readonly Row[],
  state: StateReport,
  unitFor: (row: Row) => Unit,
  folded: string | undefined,
): Omit<MeasureBlock, 'pictures'> {
  const span = extentOf(rows);
  return {
    kind: 'measure',
    heading,
    limits,
    folded,
    rows: rows.flatMap((row, index) => {
      const view = views[index];
      return view === undefined ? [] : [measureRow(row, view, state, span, unitFor)];
    }),
  };
}

function measureRow(
  row: Row,
  view: RowView,
  state: StateReport,
  span: ReturnType<typeof extentOf>,
  unitFor: (row: Row) => Unit,
): MeasureRow {
  const { where, verdict, near, limits, values, lastKnown, group } = view;
  const [judged, ...others] = values;
  const printing = printingOf(row, unitFor);
  const before = state.before(row);
  const told = {
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
    picture: bandOf(row, before, span, printing.unit, told),
    verdict: [verdict, near].filter(Boolean).join(', '),
    tone: toneOf(row.judgement.verdict),
    before: was?.slice('was '.length) ?? lastKnown,
    notes: [...(judged?.notes ?? []).filter((each) => each !== was), limits].filter(Boolean).join('; '),
    others: others.map(({ reading, agreement }) => [reading, agreement].filter(Boolean).join(', ')),
  };
}

const toneOf = (verdict: Verdict | null): Tone =>
  verdict === 'out' ? 'out' : verdict === null || verdict === 'ok' ? 'quiet' : 'notice';
