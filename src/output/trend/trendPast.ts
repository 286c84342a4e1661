import { printingOf } from '../../checks/findings/readings.ts';
import type { JudgedRoute } from '../../checks/judge/row.ts';
import type { Correction } from '../../compare/past.ts';
import type { EngineState } from '../../compare/state.ts';
import type { Trend } from '../../compare/trend.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { shortCommit } from '../diff/revision.ts';
import type { ChartGlyphs } from './trendChart.ts';
import { followedAt, heightText } from './trendWords.ts';

/** Which readings only an earlier commit holds, and which values were put right since. */
export function pastNotes(
  trend: Trend,
  { past: glyph }: ChartGlyphs,
  unitFor: EngineState['unitFor'],
): readonly string[] {
  const { removed, corrected } = trend.past;
  const used = [...removed].filter(([session]) =>
    trend.lines.some(({ points }) => points.some((point) => point.session === session)),
  );
  return [
    ...used.map(
      ([session, held]) =>
        `${nameOf(session)} was removed: taken from commit ${shortCommit(held)} of ${held.date} (${glyph} in a chart)`,
    ),
    ...corrected.map((each) => correctionText(each, trend, unitFor)),
  ];
}

function correctionText(
  { session, row, was, is, held }: Correction,
  trend: Trend,
  unitFor: EngineState['unitFor'],
): string {
  const followed = followedAt(row.position, trend);
  const text = (value: JudgedRoute): string =>
    heightText(toNumber(value[followed]), printingOf(row, unitFor));
  const at = trend.characteristic.family.isSingle ? '' : ` at ${row.position.name}`;
  const now = is === undefined ? 'not stated any more' : `now ${text(is)}`;
  return `${nameOf(session)}${at}: ${now}; ${text(was)} in commit ${shortCommit(held)} of ${held.date} is not used`;
}

const nameOf = ({ stage, date }: SessionDocument): string => `${stage} ${date}`;
