import type { Axis } from '../../layout/axis.ts';
import { AXES } from '../../layout/axis.ts';

/** What may stand in a cell; null where there is nothing. */
export type ExportValue = string | number | null;

/** A row of the exported table, by the names of its columns. */
export type ExportRow = Readonly<Record<string, ExportValue>>;

export interface ExportColumn {
  readonly name: string;
  readonly type: 'text' | 'number';
}

const text = (name: string): ExportColumn => ({ name, type: 'text' });
const number = (name: string): ExportColumn => ({ name, type: 'number' });

/** A column for what a position is along each axis; the whole engine is no place in it. */
export const AXIS_COLUMNS: readonly { readonly axis: Axis; readonly column: string }[] = AXES.flatMap(
  (axis) => (axis === 'engine' ? [] : [{ axis, column: axis.replaceAll(' ', '_') }]),
);

/** Every column, in its order: of a row that is a reading, and of one that is a judged value. */
export const EXPORT_COLUMNS: readonly ExportColumn[] = [
  text('row'),
  text('engine'),
  text('engine_name'),
  text('session'),
  text('stage'),
  text('date'),
  number('hours'),
  text('by'),
  text('machine_shop'),
  text('measure'),
  text('quantity'),
  text('position'),
  ...AXIS_COLUMNS.map(({ column }) => text(column)),
  text('half'),
  text('station'),
  text('direction'),
  text('part_mark'),
  text('written'),
  number('value'),
  text('unit'),
  number('value_si'),
  text('unit_si'),
  number('least'),
  number('greatest'),
  number('expanded_uncertainty'),
  number('limit_min'),
  text('limit_min_band'),
  number('limit_max'),
  text('limit_max_band'),
  text('verdict'),
  text('instrument'),
  text('route'),
  text('commit'),
];

export const cellsOf = (row: ExportRow): readonly ExportValue[] =>
  EXPORT_COLUMNS.map(({ name }) => row[name] ?? null);
