import { limitNumber, type Printing, printingOf } from '../../../checks/findings/readings.ts';
import type { ReportedSession } from '../../../checks/judge/report.ts';
import type { Row } from '../../../checks/judge/row.ts';
import type { Bands, SideLimit } from '../../../checks/judge/sideLimit.ts';
import { BAND_NAMES, type BandName } from '../../../documents/limits/bands.ts';
import { headedWithUnit } from '../../../quantity/format.ts';
import type { Unit } from '../../../quantity/units.ts';
import { byMeasure } from '../byMeasure.ts';
import { inPinOrder } from '../pinGroups.ts';
import { sizeText } from '../sizeText.ts';
import { warmthText } from '../warmthText.ts';
import { extentOf } from './rowPicture.ts';
import { type RowView, rowView } from './rowView.ts';

/** One characteristic: what it is called, the limits of most of its rows, and a row a position. */
export interface TableView {
  readonly heading: string;
  readonly limits: string;
  readonly rows: readonly RowView[];
}

export const tableViews = (
  session: ReportedSession,
  unitFor: (row: Row) => Unit,
  detail: boolean,
): readonly TableView[] =>
  byMeasure(session.rows).flatMap((rows) => tableView(inPinOrder(rows), session, unitFor, detail) ?? []);

function tableView(
  rows: readonly Row[],
  session: ReportedSession,
  unitFor: (row: Row) => Unit,
  detail: boolean,
): TableView | undefined {
  const [first] = rows;
  if (first === undefined) return undefined;
  const printing = printingOf(first, unitFor);
  const bands = rows.map((row) => [
    ...bandsTexts(row.limits.bands, printing),
    ...sizeText(row, printing.unit),
    ...warmthText(row),
  ]);
  const usual = usualBands(rows, bands);
  const own = bands.map((texts) => texts.filter((text) => !usual.includes(text)).join(', '));
  const span = extentOf(rows);
  return {
    heading: headedWithUnit(first.characteristic.label, printing.unit),
    limits: usual.join(', '),
    rows: rows.map((row, index) => {
      const limits = own[index] ?? '';
      const around = { session, printing, span, above: rows[index - 1], limits, detail };
      return rowView(row, around);
    }),
  };
}

/** `target 0.0026 to 0.0032`, `new 0.0020 to 0.0038`, `wear max 0.0050`. */
const bandsTexts = (bands: Bands, printing: Printing): readonly string[] =>
  BAND_NAMES.flatMap((name) => bandText(name, bands[name], printing));

/** The limits of most rows; of as many the general ones, since a position's own stand beside it. */
function usualBands(rows: readonly Row[], bands: readonly (readonly string[])[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const [index, { limits }] of rows.entries()) {
    const text = (bands[index] ?? []).join(', ');
    // More than nothing and less than one row.
    const weight = limits.inForce.isGeneral ? 1 + 1 / (2 * rows.length) : 1;
    counts.set(text, (counts.get(text) ?? 0) + weight);
  }
  const [most] = [...counts].reduce((best, each) => (each[1] > best[1] ? each : best), ['', 0]);
  return bands.find((texts) => texts.join(', ') === most) ?? [];
}

function bandText(name: BandName, band: Bands[BandName], printing: Printing): readonly string[] {
  const text = (limit: SideLimit): string => limitNumber(limit, printing);
  if (band?.min !== undefined && band.max !== undefined)
    return [`${name} ${text(band.min)} to ${text(band.max)}`];
  if (band?.max !== undefined) return [`${name} max ${text(band.max)}`];
  return band?.min === undefined ? [] : [`${name} min ${text(band.min)}`];
}
