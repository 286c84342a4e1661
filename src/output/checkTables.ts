import { formatLimit, type Printing, pastText, printingOf, readingText } from '../checks/readings.ts';
import type { ReportedSession } from '../checks/report.ts';
import type { JudgedRoute, Row } from '../checks/row.ts';
import type { Bands, SideLimit, Verdict } from '../checks/verdict.ts';
import { BAND_NAMES, type BandName } from '../documents/limits.ts';
import { formatUncertainty } from '../quantity/format.ts';
import { toNumber } from '../quantity/fraction.ts';
import type { Unit } from '../quantity/units.ts';
import type { Paint } from './paint.ts';
import { drawBand } from './picture.ts';
import { type Cell, type Column, cell, fitting, layTable, painted, widthOf } from './table.ts';
import type { TextStyle } from './textStyle.ts';
import { visible } from './visible.ts';
import { wrap } from './wrap.ts';

type UnitFor = (row: Row) => Unit;

/** One table a characteristic: a line with its limits, then a row a position. */
export function characteristicTables(
  session: ReportedSession,
  unitFor: UnitFor,
  style: TextStyle,
): readonly string[] {
  const groups = new Map<string, Row[]>();
  for (const row of session.rows) {
    const group = groups.get(row.characteristic.id);
    if (group === undefined) groups.set(row.characteristic.id, [row]);
    else group.push(row);
  }
  return [...groups.values()].flatMap((rows) => ['', ...tableOf(rows, session, unitFor, style)]);
}

function tableOf(
  rows: readonly Row[],
  session: ReportedSession,
  unitFor: UnitFor,
  style: TextStyle,
): readonly string[] {
  const [first] = rows;
  if (first === undefined) return [];
  const unit = unitFor(first);
  const decimals = Math.max(...rows.map((row) => printingOf(row, unitFor).decimals));
  const usual = mostCommon(rows.map((row) => bandsText(row.limits.bands, { unit, decimals })));
  const heading = `${first.characteristic.label}, ${unit.name}`;
  const lines = fitting(style.width, SHAPES, (shape) =>
    layTable(
      rows.flatMap((row) => rowCells(row, { unit, decimals }, usual, session, style, shape)),
      COLUMNS,
    ),
  );
  return [...headingLines(heading, usual, style), ...lines];
}

/** The limits stand beside the name, or below it where both together are too wide. */
function headingLines(heading: string, limits: string, { paint, width }: TextStyle): readonly string[] {
  if (limits === '') return [paint.strong(heading)];
  return widthOf(heading) + 2 + widthOf(limits) <= width
    ? [`${paint.strong(heading)}  ${paint.faint(limits)}`]
    : [paint.strong(heading), ...wrap(limits, width - 4).map((line) => `    ${paint.faint(line)}`)];
}

/** What gives way first where the window is narrow. */
interface Shape {
  readonly picture: number;
  /** What it was before, notes and limits of its own: beside the verdict, or where that is too wide on a line below. */
  readonly extras: 'beside' | 'below';
  /** Positions without their labels. */
  readonly bare?: boolean;
}

const SHAPES: readonly Shape[] = [
  { picture: 25, extras: 'beside' },
  { picture: 19, extras: 'beside' },
  { picture: 19, extras: 'below' },
  { picture: 13, extras: 'below' },
  { picture: 0, extras: 'below' },
  { picture: 0, extras: 'below', bare: true },
];

const COLUMNS: readonly Column[] = [
  { align: 'left' },
  { align: 'right' },
  { align: 'left' },
  { align: 'left' },
  { align: 'left' },
  { align: 'left' },
];

function rowCells(
  row: Row,
  printing: Printing,
  usual: string,
  session: ReportedSession,
  style: TextStyle,
  shape: Shape,
): readonly (readonly Cell[])[] {
  const [judged, ...others] = row.routes;
  const where = cell(shape.bare === true ? visible(row.position) : positionText(row));
  if (judged === undefined) return [[where, cell(''), cell(''), verdictCell(row, printing, style.paint)]];
  const own = bandsTexts(row.limits.bands, printing).filter((text) => !usual.split(', ').includes(text));
  const extras = extrasText(row, judged, session, printing, own.join(', '));
  return [
    [
      where,
      cell(readingText(judged, printing)),
      cell(shape.picture === 0 ? '' : pictureOf(row, judged, shape.picture, style)),
      verdictCell(row, printing, style.paint),
      painted(shape.extras === 'beside' ? extras : '', style.paint.faint),
      painted(style.detail ? detailText(judged, printing) : '', style.paint.faint),
    ],
    ...(shape.extras === 'below' && extras !== ''
      ? [[{ text: style.paint.faint(`  ${extras}`), width: 0 }]]
      : []),
    ...others.map((other) => otherRoute(row, other, printing, shape, style)),
  ];
}

export function positionText({ characteristic, position, label }: Row): string {
  if (characteristic.family === 'engine') return '';
  return visible(label === undefined ? position : `${position} ${label}`);
}

/** Another route to the same thing: beside the judged one, with how well the two agree. */
function otherRoute(
  row: Row,
  other: JudgedRoute,
  printing: Printing,
  shape: Shape,
  style: TextStyle,
): readonly Cell[] {
  const agreement = other.en === null ? '' : `, E_n ${other.en.toFixed(1)}`;
  const text = `${other.route.name}${style.detail ? ` (${other.route.with.join(', ')})` : ''}${agreement}`;
  return [
    cell(''),
    painted(readingText(other, printing), style.paint.faint),
    cell(shape.picture === 0 ? '' : pictureOf(row, other, shape.picture, style)),
    painted(visible(text), style.paint.faint),
    cell(''),
    painted(style.detail ? detailText(other, printing) : '', style.paint.faint),
  ];
}

/** The verdict in words, with the side and the distance. */
export function verdictText(row: Row, printing: Printing): string {
  const { verdict, past, marginal } = row.judgement;
  const [judged] = row.routes;
  if (verdict === null) return '';
  if (verdict === 'missing' || judged === undefined) return verdict;
  const u = `±${formatUncertainty(judged.route.expanded, printing.unit)}`;
  if (verdict === 'undecided') return `undecided at ${u}`;
  const distance = past === undefined ? verdict : `${verdict}, ${pastText(row, printing)}`;
  return marginal ? `${distance}, marginal at ${u}` : distance;
}

const COLOURS: Readonly<Record<Verdict, keyof Paint>> = {
  ok: 'good',
  'off target': 'notice',
  worn: 'notice',
  undecided: 'notice',
  missing: 'notice',
  accepted: 'notice',
  out: 'bad',
};

function verdictCell(row: Row, printing: Printing, paint: Paint): Cell {
  const { verdict } = row.judgement;
  const text = verdictText(row, printing);
  return verdict === null ? cell(text) : painted(text, paint[COLOURS[verdict]]);
}

/** What it was before, what the readings show besides, and limits of its own. */
function extrasText(
  row: Row,
  judged: JudgedRoute,
  session: ReportedSession,
  printing: Printing,
  ownLimits: string,
): string {
  const earlier = session.before(row)?.row.routes[0];
  const was = earlier === undefined ? '' : `was ${readingText(earlier, printing)}`;
  return [was, ...judged.route.notes.map(visible), ownLimits].filter(Boolean).join('; ');
}

function detailText({ route }: JudgedRoute, { unit }: Printing): string {
  return `±${formatUncertainty(route.expanded, unit)}  ${route.name}, ${route.with.map(visible).join(', ')}`;
}

/** `target 0.0026 to 0.0032, new 0.0020 to 0.0038, wear max 0.0050`. */
const bandsText = (bands: Bands, printing: Printing): string => bandsTexts(bands, printing).join(', ');

const bandsTexts = (bands: Bands, printing: Printing): readonly string[] =>
  BAND_NAMES.flatMap((name) => bandText(name, bands[name], printing));

/** The limits that most rows share head the table; the others say their own. */
function mostCommon(texts: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts].reduce((best, each) => (each[1] > best[1] ? each : best), ['', 0])[0];
}

function bandText(name: BandName, band: Bands[BandName], { unit, decimals }: Printing): readonly string[] {
  const text = (limit: SideLimit): string => formatLimit(limit.amount, unit, decimals);
  if (band?.min !== undefined && band.max !== undefined)
    return [`${name} ${text(band.min)} to ${text(band.max)}`];
  if (band?.max !== undefined) return [`${name} max ${text(band.max)}`];
  return band?.min === undefined ? [] : [`${name} min ${text(band.min)}`];
}

function pictureOf(row: Row, { least, greatest }: JudgedRoute, width: number, { glyphs }: TextStyle): string {
  const { deciding } = row.judgement;
  const { target, new: fresh } = row.limits.bands;
  const of = (limit: SideLimit | undefined): number | undefined => limit && toNumber(limit.amount);
  const [min, max] = [of(deciding.min), of(deciding.max)];
  const openTo = max !== undefined && min === undefined ? (of(fresh?.min) ?? 0) : of(fresh?.max);
  return drawBand(
    {
      least: toNumber(least),
      greatest: toNumber(greatest),
      min,
      max,
      target: target && { min: of(target.min), max: of(target.max) },
      openTo: isFar(openTo, max) ? undefined : openTo,
    },
    width,
    glyphs,
  );
}

/** A bore's picture does not begin at nought: only what lies near the limit in size is drawn to. */
const isFar = (openTo: number | undefined, max: number | undefined): boolean =>
  openTo === 0 && max !== undefined && max > 50_000_000;
