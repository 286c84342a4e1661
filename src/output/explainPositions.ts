import { printingOf, readingText } from '../checks/readings.ts';
import type { ReportedSession } from '../checks/report.ts';
import type { Row } from '../checks/row.ts';
import type { Unit } from '../quantity/units.ts';
import { positionText, verdictText } from './checkTables.ts';
import { shellWord } from './shellWord.ts';
import { type Cell, cell, layTable } from './table.ts';
import type { TextStyle } from './textStyle.ts';
import { visible } from './visible.ts';

/** A row and the session that has it. */
export interface MeasuredRow {
  readonly row: Row;
  readonly of: ReportedSession;
}

/** Where a characteristic was measured, and how to ask about one of these values. */
export function positionsText(
  call: readonly [engine: string, measure: string],
  rows: readonly MeasuredRow[],
  unitFor: (row: Row) => Unit,
  { paint }: TextStyle,
): string {
  const [first] = rows;
  if (first === undefined) return '';
  const { label } = first.row.characteristic;
  const lines = rows.map(({ row, of: { session } }): readonly Cell[] => {
    const printing = printingOf(row, unitFor);
    const [judged] = row.routes;
    return [
      cell(positionText(row)),
      cell(judged === undefined ? '' : readingText(judged, printing)),
      cell(verdictText(row, printing)),
      cell(`${session.stage} ${session.date}`),
    ];
  });
  const again = [...call, first.row.position].map(shellWord).join(' ');
  return [
    `${paint.strong(visible(label))}, ${unitFor(first.row).name}`,
    ...layTable(lines, [{ align: 'left' }, { align: 'right' }, { align: 'left' }, { align: 'left' }]),
    '',
    `one of them: tenths explain ${visible(again)}`,
    '',
  ].join('\n');
}
