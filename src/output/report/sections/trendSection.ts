import type { Characteristic } from '../../../characteristics/characteristic.ts';
import { type EngineReport, type StateReport, unitsFor } from '../../../checks/judge/report.ts';
import { trendOf } from '../../../compare/trend.ts';
import type { TrendPicture } from '../../page/pictures/trend.ts';
import { drawnTrend } from '../../trend/drawnTrend.ts';
import { mostPressing } from '../../trend/trendPicture.ts';
import { type SheetSection, section } from '../sheet.ts';

/** Of what was measured three times or more the position that meets its limit first, as `trend` works it out. */
export function trendSection(report: EngineReport, state: StateReport): readonly SheetSection[] {
  const measured = new Set(state.rows.map(({ characteristic }) => characteristic));
  const pictures = [...measured].flatMap((characteristic) => trendPicture(characteristic, report) ?? []);
  return section('Trends', pictures.length === 0 ? [] : [{ kind: 'pictures', pictures }]);
}

function trendPicture(
  characteristic: Characteristic,
  { engine, registry, sessions }: EngineReport,
): TrendPicture | undefined {
  const read = sessions.filter(({ rows }) =>
    rows.some((row) => row.characteristic.id === characteristic.id && row.routes.length > 0),
  );
  if (read.length < 3 || characteristic.quantity === 'pass or fail') return undefined;
  const trend = trendOf({ engine, sessions }, registry, characteristic);
  const pressing = mostPressing(trend.lines);
  return pressing && drawnTrend(pressing, trend, unitsFor(engine));
}
