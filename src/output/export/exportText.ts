import { writtenCsv } from '../escape/csv.ts';
import { json, writtenJson } from '../escape/json.ts';
import { together, type Written } from '../escape/language.ts';
import { cellsOf, EXPORT_COLUMNS, type ExportRow } from './exportRow.ts';

/** A spreadsheet: text that begins like a formula has an apostrophe before it. */
export const exportCsv = (rows: readonly ExportRow[]): Written =>
  writtenCsv([
    EXPORT_COLUMNS.map(({ name }) => name),
    ...rows.map((row) => cellsOf(row).map((value) => value ?? '')),
  ]);

/** One JSON object a line, with every column. */
export const exportJsonLines = (rows: readonly ExportRow[]): Written =>
  together(...rows.map((row) => writtenJson(json`${withEveryColumn(row)}\n`)));

const withEveryColumn = (row: ExportRow): ExportRow =>
  Object.fromEntries(EXPORT_COLUMNS.map(({ name }) => [name, row[name] ?? null]));
