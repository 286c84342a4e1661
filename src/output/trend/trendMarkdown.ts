import type { EngineState } from '../../compare/state.ts';
import type { Trend } from '../../compare/trend.ts';
import { codeBlock, type Markdown, markdownList, markdownTable, md } from '../escape/markdown.ts';
import { onPage } from '../terminal/onPage.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { pastNotes } from './trendPast.ts';
import { chartLines, glyphsOf, mostPressing } from './trendPicture.ts';
import type { TrendRow, TrendView } from './trendView.ts';

/** For a pull request or a wiki: a table, what has to be known of it, and the chart of the most pressing line. */
export function trendMarkdown(
  view: TrendView,
  trend: Trend,
  unitFor: EngineState['unitFor'],
  style: TextStyle,
): readonly Markdown[] {
  const pressing = mostPressing(trend.lines);
  const chart = pressing === undefined ? [] : chartLines(pressing, trend, unitFor, onPage(style));
  const notes = [...view.notes, ...pastNotes(trend, glyphsOf(style), unitFor)];
  return [
    md`### ${view.heading}`,
    md`${view.about}`,
    markdownTable(['', 'readings', 'from first to last', 'rate', 'outlook'], view.rows.map(cells)),
    ...(notes.length === 0 ? [] : [markdownList(notes)]),
    ...(chart.length === 0 ? [] : [codeBlock(chart)]),
  ];
}

const cells = ({ position, readings, values, rate, outlook, kind }: TrendRow) => [
  position,
  readings,
  values,
  rate,
  kind === 'beyond' ? md`**${outlook}**` : outlook,
];
