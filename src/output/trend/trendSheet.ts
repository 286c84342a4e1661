import type { EngineState } from '../../compare/state.ts';
import type { Trend } from '../../compare/trend.ts';
import { type NamedCommit, revisionWords } from '../diff/revision.ts';
import { items, type Sheet, section, table } from '../report/sheet.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { drawnTrend } from './drawnTrend.ts';
import { pastNotes } from './trendPast.ts';
import { glyphsOf, mostPressing } from './trendPicture.ts';
import type { TrendView } from './trendView.ts';

/** One characteristic as a page: the most pressing line drawn, every line in words, what has to be known of them. */
export function trendSheet(
  view: TrendView,
  trend: Trend,
  revision: NamedCommit | undefined,
  unitFor: EngineState['unitFor'],
  style: TextStyle,
): Sheet {
  const pressing = mostPressing(trend.lines);
  const pictures = pressing === undefined ? [] : [drawnTrend(pressing, trend, unitFor)];
  return {
    title: view.heading,
    about: view.about,
    facts: revision === undefined ? [] : [{ name: 'read at', value: revisionWords(revision) }],
    status: undefined,
    verdict: '',
    reasons: [],
    sections: [
      ...section('The most pressing', pictures.length === 0 ? [] : [{ kind: 'pictures', pictures }]),
      ...section(
        'All positions',
        table(
          view.heading,
          ['position', 'readings', 'from first to last', { title: 'rate', align: 'right' }, 'outlook'],
          view.rows.map(({ position, readings, values, rate, outlook }) => [
            position,
            readings,
            values,
            rate,
            outlook,
          ]),
        ),
        items('list', [...view.notes, ...pastNotes(trend, glyphsOf(style), unitFor)]),
      ),
    ],
    cautions: [],
  };
}
