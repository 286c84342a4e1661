import {
  limitNumber,
  type Printing,
  pastText,
  plusMinus,
  printingOf,
  readingText,
} from '../../checks/findings/readings.ts';
import type { EarlierRow, ReportedSession } from '../../checks/judge/report.ts';
import type { JudgedRoute, Row } from '../../checks/judge/row.ts';
import type { Bands, SideLimit } from '../../checks/judge/sideLimit.ts';
import type { Verdict } from '../../checks/judge/verdict.ts';
import { warmthNote } from '../../checks/value/blockWarmth.ts';
import { BAND_NAMES, type BandName } from '../../documents/limits/bands.ts';
import { tableName } from '../../layout/naming.ts';
import { headedWithUnit } from '../../quantity/format.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Line, line } from '../escape/line.ts';
import type { Paint } from '../terminal/paint.ts';
import { type Cell, type Column, cell, fitting, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import { byMeasure } from './byMeasure.ts';
import { hotNote } from './hotText.ts';
import { inPinOrder, pinHeading } from './pinGroups.ts';
import { type Extent, extentOf, pictureOf } from './rowPicture.ts';
import { sizeText } from './sizeText.ts';
import { warmthText } from './warmthText.ts';

type UnitFor = (row: Row) => Unit;

/** One table a characteristic: a line with its limits, then a row a position. */
export function characteristicTables(
  session: ReportedSession,
  unitFor: UnitFor,
  style: TextStyle,
): readonly Line[] {
  return byMeasure(session.rows).flatMap((rows) => [
    '',
    ...tableOf(inPinOrder(rows), session, unitFor, style),
  ]);
}

function tableOf(
  rows: readonly Row[],
  session: ReportedSession,
  unitFor: UnitFor,
  style: TextStyle,
): readonly Line[] {
  const [first] = rows;
  if (first === undefined) return [];
  const printing = printingOf(first, unitFor);
  const bands = rows.map((row) => [
    ...bandsTexts(row.limits.bands, printing),
    ...sizeText(row, printing.unit),
    ...warmthText(row),
  ]);
  const usual = usualBands(rows, bands);
  const own = bands.map((texts) => texts.filter((text) => !usual.includes(text)).join(', '));
  const heading = headedWithUnit(first.characteristic.label, printing.unit);
  const span = extentOf(rows);
  const lines = fitting(style.width, SHAPES, (shape) => {
    const lines = rows.flatMap((row, index) => {
      const [top, ...more] = rowLines(row, own[index] ?? '', printing, { span, session, style, shape });
      const above = pinHeading(row, rows[index - 1]);
      return top === undefined ? [] : [{ ...top, above }, ...more];
    });
    const laid = layTable(
      lines.map(({ cells }) => cells),
      COLUMNS,
    );
    return laid.flatMap((each, index) => {
      const { above, below } = lines[index] ?? { below: '' };
      return [...aboveLines(above, style), each, ...belowLines(below, style)];
    });
  });
  return [...headingLines(heading, usual.join(', '), style), ...lines];
}

const aboveLines = (text: string | undefined, { paint }: TextStyle): readonly Line[] =>
  text === undefined ? [] : [line`  ${paint.faint(text)}`];

/** The limits stand beside what they limit, or below it where that is too wide. */
function headingLines(heading: string, limits: string, { paint, width }: TextStyle): readonly Line[] {
  if (limits === '') return [paint.strong(heading)];
  if (widthOf(heading) + 2 + widthOf(limits) <= width)
    return [line`${paint.strong(heading)}  ${paint.faint(limits)}`];
  return [paint.strong(heading), ...wrap(limits, width - 2).map((each) => line`  ${paint.faint(each)}`)];
}

const belowLines = (text: string, { paint, width }: TextStyle): readonly Line[] =>
  text === '' ? [] : wrap(text, width - 6).map((each) => line`      ${paint.faint(each)}`);

/** What gives way first where the window is narrow. */
interface Shape {
  readonly picture: number;
  /** What it was before, notes, limits of its own and details: beside the verdict, or on a line below. */
  readonly extras: 'beside' | 'below';
  /** How near the limit lies below the row, and not behind the verdict. */
  readonly terse?: boolean;
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
  { picture: 0, extras: 'below', bare: true, terse: true },
];

const COLUMNS: readonly Column[] = [
  { align: 'left' },
  { align: 'right' },
  { align: 'left' },
  { align: 'left' },
  { align: 'left' },
  { align: 'left' },
  { align: 'left' },
];

/** A row of the table, and what stands below it where the window is too narrow for it. */
interface RowLine {
  /** Of the first of several that run on one pin: which they are. */
  readonly above?: string | undefined;
  readonly cells: readonly Cell[];
  readonly below: string;
}

interface TableContext {
  readonly span: Extent;
  readonly session: ReportedSession;
  readonly style: TextStyle;
  readonly shape: Shape;
}

function rowLines(row: Row, limits: string, printing: Printing, around: TableContext): readonly RowLine[] {
  const [judged, ...others] = row.routes;
  const { session, style, shape } = around;
  const where = cell(shape.bare === true ? row.position.name : positionText(row));
  if (judged === undefined) {
    const known = lastKnownText(session.before(row), printing);
    const isBeside = shape.extras === 'beside';
    const cells = [where, cell(''), cell(''), verdictCell(row, printing, style.paint)];
    return [
      { cells: [...cells, cell(style.paint.faint(isBeside ? known : ''))], below: isBeside ? '' : known },
    ];
  }
  const { takenFrom, notes: said, warmth } = judged.route;
  const held = takenFrom === undefined ? '' : `read ${takenFrom}`;
  const hot = style.detail ? hotNote(row, printing) : '';
  const notes = [held, beforeText(row, session, printing), ...said, ...warmthNote(warmth), hot].filter(
    Boolean,
  );
  const near = marginalText(row, printing);
  const isBelow = shape.terse === true && near !== '';
  const extras = { before: isBelow ? [near, ...notes] : notes, limits };
  const verdict = verdictCell(row, printing, style.paint, isBelow);
  return [
    rowLine(row, judged, { where, verdict, extras }, printing, around),
    ...others.map((other) => otherRoute(row, other, printing, around)),
  ];
}

interface Said {
  readonly where: Cell;
  readonly verdict: Cell;
  readonly extras: { readonly before: readonly string[]; readonly limits: string };
}

function rowLine(
  row: Row,
  route: JudgedRoute,
  said: Said,
  printing: Printing,
  around: TableContext,
): RowLine {
  const { span, style, shape } = around;
  const { before, limits } = said.extras;
  const isBeside = shape.extras === 'beside';
  const [u, from] = style.detail ? detailTexts(route, printing) : ['', ''];
  const faint = (text: string): Cell => cell(style.paint.faint(isBeside ? text : ''));
  const cells = [
    said.where,
    route === row.routes[0]
      ? cell(readingText(route, printing))
      : cell(style.paint.faint(readingText(route, printing))),
    cell(shape.picture === 0 ? '' : pictureOf(row, route, shape.picture, span, style.glyphs)),
    said.verdict,
    faint([...before, limits].filter(Boolean).join('; ')),
    faint(u),
    faint(from),
  ];
  const below = [...before, limits, [u, from].filter(Boolean).join('  ')];
  return { cells, below: isBeside ? '' : below.filter(Boolean).join('; ') };
}

export const positionText = ({ position, half }: Row): string =>
  [tableName(position), half ?? ''].join(' ').trim();

/** Another route to the same thing: beside the judged one, with how well the two agree. */
function otherRoute(row: Row, other: JudgedRoute, printing: Printing, around: TableContext): RowLine {
  const agreement = other.en === null ? '' : `, E_n ${other.en.toFixed(1)}`;
  const verdict = cell(around.style.paint.faint(`${other.route.name}${agreement}`));
  return rowLine(row, other, { where: cell(''), verdict, extras: NOTHING }, printing, around);
}

const NOTHING: Said['extras'] = { before: [], limits: '' };

/** The verdict in words, with the side and the distance, and whether a limit is near. */
export const verdictText = (row: Row, printing: Printing): string =>
  [distanceText(row, printing), marginalText(row, printing)].filter(Boolean).join(', ');

function distanceText(row: Row, printing: Printing): string {
  const { verdict, past } = row.judgement;
  const [judged] = row.routes;
  if (verdict === null) return '';
  if (verdict === 'missing' || judged === undefined) return verdict;
  const u = plusMinus(judged.route, printing.unit);
  if (verdict === 'undecided') return `undecided at ${u}`;
  return past === undefined ? verdict : `${verdict}, ${pastText(row, printing)}`;
}

/** `marginal at ±0.00016`, where a deciding limit lies that near. */
function marginalText({ judgement, routes: [judged] }: Row, { unit }: Printing): string {
  const { marginal, verdict } = judgement;
  if (!marginal || judged === undefined || verdict === null || verdict === 'undecided') return '';
  return `marginal at ${plusMinus(judged.route, unit)}`;
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

function verdictCell(row: Row, printing: Printing, paint: Paint, isTerse = false): Cell {
  const { verdict } = row.judgement;
  const text = isTerse ? distanceText(row, printing) : verdictText(row, printing);
  return cell(verdict === null ? text : paint[COLOURS[verdict]](text));
}

/** What was there once and holds no longer. */
function lastKnownText(earlier: EarlierRow | undefined, printing: Printing): string {
  const [judged] = earlier?.row.routes ?? [];
  return judged === undefined ? '' : `last known ${readingText(judged, printing)} on ${earlier?.date}`;
}

function beforeText(row: Row, session: ReportedSession, printing: Printing): string {
  const earlier = session.before(row)?.row.routes[0];
  return earlier === undefined ? '' : `was ${readingText(earlier, printing)}`;
}

const detailTexts = ({ route }: JudgedRoute, { unit }: Printing): readonly [string, string] => [
  plusMinus(route, unit),
  `${route.name}, ${route.with.join(', ')}`,
];

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
