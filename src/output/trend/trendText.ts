import type { EngineState } from '../../compare/state.ts';
import type { Trend } from '../../compare/trend.ts';
import { type Line, line, withGaps } from '../escape/line.ts';
import { type Column, cell, fitting, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { pastNotes } from './trendPast.ts';
import { chartLines, glyphsOf, mostPressing } from './trendPicture.ts';
import type { TrendRow, TrendView } from './trendView.ts';

/** One characteristic of an engine across its sessions: a line a position, then the chart of the most pressing. */
export function trendLines(
  view: TrendView,
  trend: Trend,
  unitFor: EngineState['unitFor'],
  style: TextStyle,
): readonly Line[] {
  const heading = line`${style.paint.strong(view.heading)}  ${view.about}`;
  const pressing = mostPressing(trend.lines);
  const chart = pressing === undefined ? [] : chartLines(pressing, trend, unitFor, style);
  const blocks = [
    [heading, ...fitting(style.width, SHAPES, (shape) => tableLines(view.rows, shape, style))],
    [...view.notes, ...pastNotes(trend, glyphsOf(style), unitFor)].flatMap((note) => hanging(note, style)),
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

function tableLines(rows: readonly TrendRow[], { below }: Shape, style: TextStyle): readonly Line[] {
  const lines = rows.map((row) => {
    const { position, readings, values, rate } = row;
    const beside = [...[position, readings, values].map(cell), cell(rate), cell(painted(row, style))];
    return beside.slice(0, below === 'nothing' ? 5 : below === 'outlook' ? 4 : 3);
  });
  return layTable(lines, COLUMNS).flatMap((text, index) => {
    const row = rows[index];
    const reported =
      below === 'nothing' ? [] : below === 'outlook' ? [row?.outlook] : [row?.rate, row?.outlook];
    const more = reported.flatMap((each) =>
      each === undefined || each === '' ? [] : wrap(each, style.width - 6),
    );
    return [text, ...more.map((each) => `      ${each}`)];
  });
}

function painted({ kind, outlook }: TrendRow, { paint }: TextStyle): Line {
  if (kind === 'beyond') return paint.bad(outlook);
  return kind === 'reached' ? paint.notice(outlook) : outlook;
}
