import { printingOf, readingText } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import { shellWord } from '../../diagnostic/shellWord.ts';
import { headedWithUnit } from '../../quantity/format.ts';
import type { Unit } from '../../quantity/units.ts';
import { positionText, verdictText } from '../check/view/rowView.ts';
import { type Line, line } from '../escape/line.ts';
import { type Cell, type Column, cell, fitting, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { type MeasuredRow, takenText } from './measuredRow.ts';

interface Reported {
  readonly position: string;
  readonly reading: string;
  /** The verdict, and the session. */
  readonly rest: readonly string[];
}

/** With as many of the rest beside the reading, the others below. */
function tableLines(reported: readonly Reported[], beside: number): readonly Line[] {
  const cells = reported.map(({ position, reading, rest }): readonly Cell[] =>
    [position, reading, ...rest.slice(0, beside)].map(cell),
  );
  return layTable(cells, COLUMNS.slice(0, 2 + beside)).flatMap((each, index) => {
    const below = reported[index]?.rest.slice(beside).filter((text) => text !== '') ?? [];
    return below.length === 0 ? [each] : [each, `      ${below.join('  ')}`];
  });
}

const COLUMNS: readonly Column[] = [
  { align: 'left' },
  { align: 'right' },
  { align: 'left' },
  { align: 'left' },
];

/** Where a characteristic was measured, and how to ask about one of these values. */
export function positionsLines(
  [measure, engine]: readonly [measure: string, engine: string | undefined],
  rows: readonly MeasuredRow[],
  unitFor: (row: Row) => Unit,
  { paint, width }: TextStyle,
): readonly Line[] {
  const [first] = rows;
  if (first === undefined) return [];
  const { label } = first.row.characteristic;
  const reported = rows.map((each): Reported => {
    const { row } = each;
    const printing = printingOf(row, unitFor);
    const [judged] = row.routes;
    return {
      position: positionText(row),
      reading: judged === undefined ? '' : readingText(judged, printing),
      rest: [verdictText(row, printing), takenText(each)],
    };
  });
  const again = [measure, first.row.position.name, engine ?? []].flat().map(shellWord).join(' ');
  return [
    line`${paint.strong(label)}${headedWithUnit('', unitFor(first.row))}`,
    ...fitting(width, [2, 1, 0], (beside) => tableLines(reported, beside)),
    '',
    `one of them: tenths explain ${again}`,
  ];
}
