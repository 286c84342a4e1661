import type { EngineState } from '../../compare/state.ts';
import type { Trend, TrendLine } from '../../compare/trend.ts';
import { plural } from '../../quantity/words.ts';
import { positionText } from '../check/view/rowView.ts';
import { type Line, line, withGaps } from '../escape/line.ts';
import { type Cell, type Column, cell, fitting, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { pastNotes } from './trendPast.ts';
import { chartLines, glyphsOf, mostPressing } from './trendPicture.ts';
import { heightText, outlookText, printingOfLine, rateText, unlikeReadings } from './trendWords.ts';

/** One characteristic of an engine across its sessions: a line a position, then the chart of the most pressing. */
export function trendLines(
  engine: string,
  trend: Trend,
  unknownParts: readonly string[],
  unitFor: EngineState['unitFor'],
  style: TextStyle,
): readonly Line[] {
  const { characteristic, axis, lines } = trend;
  const [first] = lines;
  const unit = first === undefined ? '' : `, ${unitFor(first.row).name}`;
  const over = axis === 'hours' ? 'by running hours' : 'by date';
  const heading = line`${style.paint.strong(`${characteristic.label}${unit}`)}  ${engine}, ${over}`;
  const pressing = mostPressing(lines);
  const chart = pressing === undefined ? [] : chartLines(pressing, trend, unitFor, style);
  const blocks = [
    [heading, ...fitting(style.width, SHAPES, (shape) => tableLines(trend, shape, unitFor, style))],
    [...notesOf(trend, unknownParts), ...pastNotes(trend, glyphsOf(style), unitFor)].flatMap((note) =>
      hanging(note, style),
    ),
    chart,
  ].filter((block) => block.length > 0);
  return withGaps(blocks);
}

const hanging = (text: string, { width, paint }: TextStyle): readonly Line[] =>
  wrap(text, width - 4).map((each, index) => paint.notice(`${index === 0 ? '  ' : '    '}${each}`));

const COLUMNS: readonly Column[] = [
  { align: 'left' },
  { align: 'right' },
  { align: 'left' },
  { align: 'right' },
  { align: 'left' },
];

/** What goes below where the window is narrow. */
interface Shape {
  readonly below: 'nothing' | 'outlook' | 'rate and outlook';
}

const SHAPES: readonly Shape[] = [{ below: 'nothing' }, { below: 'outlook' }, { below: 'rate and outlook' }];

function tableLines(
  { axis, lines }: Trend,
  { below }: Shape,
  unitFor: EngineState['unitFor'],
  style: TextStyle,
): readonly Line[] {
  const rows = lines.map((each, index) => rowOf(each, lines[index - 1], axis, unitFor, style));
  if (below === 'nothing')
    return layTable(
      rows.map(({ cells, rate, outlook }) => [...cells, cell(rate), outlook]),
      COLUMNS,
    );
  const beside = rows.map(({ cells, rate }) => (below === 'outlook' ? [...cells, cell(rate)] : cells));
  return layTable(beside, COLUMNS).flatMap((text, index) => {
    const row = rows[index];
    const told = below === 'outlook' ? [row?.told] : [row?.rate, row?.told];
    return [
      text,
      ...told
        .flatMap((each) => (each === undefined || each === '' ? [] : wrap(each, style.width - 6)))
        .map((each) => `      ${each}`),
    ];
  });
}

interface LineRow {
  /** Position, count and values. */
  readonly cells: readonly Cell[];
  readonly rate: string;
  readonly outlook: Cell;
  /** The outlook without colours. */
  readonly told: string;
}

function rowOf(
  of: TrendLine,
  before: TrendLine | undefined,
  axis: Trend['axis'],
  unitFor: EngineState['unitFor'],
  { paint }: TextStyle,
): LineRow {
  const printing = printingOfLine(of, unitFor);
  const [first, last] = [of.points[0], of.points.at(-1)];
  const values = [first, ...(of.points.length > 1 ? [last] : [])].flatMap((point) => point ?? []);
  const isNext = before?.row.position.key === of.row.position.key;
  const { kind } = of.fit.outlook;
  const colour = kind === 'beyond' ? paint.bad : kind === 'reached' ? paint.notice : (text: Line) => text;
  const outlook = outlookText(of, axis, printing);
  return {
    cells: [
      cell(isNext ? '' : positionText(of.row)),
      cell(plural(of.points.length, 'reading')),
      cell(values.map(({ y }) => heightText(y, printing)).join(' → ')),
    ],
    rate: rateText(of, axis, printing),
    outlook: cell(colour(outlook)),
    told: outlook,
  };
}

/** What a reader must know before a number of the table is believed. */
function notesOf(
  { characteristic, lines, withoutHours }: Trend,
  unknownParts: readonly string[],
): readonly string[] {
  const started = new Map<string, string[]>();
  const unlike = new Map<string, string[]>();
  const gather = (into: Map<string, string[]>, key: string, { row }: TrendLine): void => {
    if (key !== '') into.set(key, [...(into.get(key) ?? []), row.position.name]);
  };
  for (const line of lines) {
    const [first] = line.points;
    const since = `${first?.session.stage} ${first?.session.date}`;
    gather(started, line.startedBy === undefined ? '' : `a new line since ${since}: ${line.startedBy}`, line);
    gather(unlike, unlikeReadings(line), line);
  }
  const at = (positions: readonly string[]): string =>
    characteristic.family.isSingle ? '' : ` (${positions.join(', ')})`;
  return [
    ...followedNote(lines),
    ...[...started].map(([text, positions]) => `${text}${at(positions)}`),
    ...[...unlike].map(([text, positions]) => `not like for like${at(positions)}: ${text}`),
    ...unknownParts.map(
      (part) => `${part}: not known which readings that concerns, so no new line begins there`,
    ),
    ...(withoutHours.length === 0
      ? []
      : [`by date: no hours in ${withoutHours.map(({ name }) => name).join(', ')}`]),
    ...(characteristic.figure === 'taper' || characteristic.figure === 'out of round' ? [BIAS] : []),
  ];
}

/** A round journal shows a tenth out of round more often than not when a reading scatters by three to five tenths. */
const BIAS =
  'a greatest less a least: the scatter of the readings alone makes it larger, so a small value is less than it looks';

function followedNote(lines: readonly TrendLine[]): readonly string[] {
  const followed = [...new Set(lines.map((line) => line.followed))].filter((each) => each !== 'mean');
  return followed.map((each) => `the ${each} of each session's readings, which meets its limit first`);
}
