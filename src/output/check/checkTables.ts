import type { Verdict } from '../../checks/judge/verdict.ts';
import { type Line, line } from '../escape/line.ts';
import { layManyRows } from '../terminal/manyRows.ts';
import type { Paint } from '../terminal/paint.ts';
import { drawBand } from '../terminal/picture.ts';
import { type Cell, type Column, cell, fitting } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import type { RowView, ValueView } from './view/rowView.ts';
import type { TableView } from './view/tableView.ts';

/** A line with the limits of a characteristic, then a row a position: as wide as fits. */
export const tablesLines = (tables: readonly TableView[], style: TextStyle): readonly Line[] =>
  tables.flatMap((each) => ['', ...tableLines(each, style)]);

function tableLines({ heading, limits, rows }: TableView, style: TextStyle): readonly Line[] {
  const lines = fitting(style.width, SHAPES, (shape) => {
    const lines = rows.flatMap((row) => {
      const [top, ...more] = rowLines(row, { style, shape });
      return top === undefined ? [] : [{ ...top, above: row.group }, ...more];
    });
    const laid = layManyRows(
      lines.map(({ cells }) => cells),
      COLUMNS,
    );
    const beside = Math.max(...laid.map((each) => widthOf(each))) + 2;
    return laid.flatMap((each, index) => {
      const { above, below } = lines[index] ?? { below: '' };
      return [...aboveLines(above, style), ...withExtras(each, below, beside, style)];
    });
  });
  return [...headingLines(heading, limits, style), ...lines];
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

/** What is too wide to stand beside its row stands below it; the other rows keep theirs. */
function withExtras(row: Line, extras: string, column: number, style: TextStyle): readonly Line[] {
  if (extras === '' || column + widthOf(extras) > style.width) return [row, ...belowLines(extras, style)];
  return [line`${row}${' '.repeat(column - widthOf(row))}${style.paint.faint(extras)}`];
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
  { picture: 9, extras: 'below' },
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
  readonly above?: string | undefined;
  readonly cells: readonly Cell[];
  readonly below: string;
}

interface TableContext {
  readonly style: TextStyle;
  readonly shape: Shape;
}

function rowLines(view: RowView, around: TableContext): readonly RowLine[] {
  const [judged, ...others] = view.values;
  const { style, shape } = around;
  const where = cell(shape.bare === true ? view.position : view.where);
  if (judged === undefined) {
    const isBeside = shape.extras === 'beside';
    const cells = [where, cell(''), cell(''), verdictCell(view, style.paint)];
    return [
      {
        cells: [...cells, cell(style.paint.faint(isBeside ? view.instead : ''))],
        below: isBeside ? '' : view.instead,
      },
    ];
  }
  const isBelow = shape.terse === true && view.near !== '';
  const notes = [...(isBelow ? [view.near] : []), ...judged.notes, view.limits].filter(Boolean);
  const verdict = verdictCell(view, style.paint, isBelow);
  return [
    valueLine(view, judged, { where, verdict, notes }, around),
    ...others.map((other) => otherRoute(view, other, around)),
  ];
}

interface Said {
  readonly where: Cell;
  readonly verdict: Cell;
  readonly notes: readonly string[];
}

function valueLine(view: RowView, value: ValueView, said: Said, around: TableContext): RowLine {
  const { style, shape } = around;
  const { reading, picture, uncertainty, from } = value;
  const isBeside = shape.extras === 'beside';
  const faint = (text: string): Cell => cell(style.paint.faint(isBeside ? text : ''));
  const cells = [
    said.where,
    cell(value === view.values[0] ? reading : style.paint.faint(reading)),
    cell(shape.picture === 0 ? '' : drawBand(picture, shape.picture, style.glyphs)),
    said.verdict,
    faint(said.notes.join('; ')),
    faint(uncertainty),
    faint(from),
  ];
  const below = [...said.notes, [uncertainty, from].filter(Boolean).join('  ')];
  return { cells, below: isBeside ? '' : below.filter(Boolean).join('; ') };
}

/** Another route to the same thing: beside the judged one, with how well the two agree. */
const otherRoute = (view: RowView, other: ValueView, around: TableContext): RowLine =>
  valueLine(
    view,
    other,
    { where: cell(''), verdict: cell(around.style.paint.faint(other.agreement)), notes: [] },
    around,
  );

const COLOURS: Readonly<Record<Verdict, keyof Paint>> = {
  ok: 'good',
  'off target': 'notice',
  worn: 'notice',
  undecided: 'notice',
  missing: 'notice',
  'left out': 'notice',
  accepted: 'notice',
  out: 'bad',
};

function verdictCell({ given, verdict, near }: RowView, paint: Paint, isTerse = false): Cell {
  const text = isTerse ? verdict : [verdict, near].filter(Boolean).join(', ');
  return cell(given === null ? text : paint[COLOURS[given]](text));
}
