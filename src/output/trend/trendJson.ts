import type { Correction, EarlierStates } from '../../compare/past.ts';
import type { EngineState } from '../../compare/state.ts';
import { dayText, type Trend, type TrendAxis, type TrendLine } from '../../compare/trend.ts';
import type { Outlook } from '../../compare/trendFit.ts';
import type { TrendPoint } from '../../compare/trendPoint.ts';
import type { Interval } from '../../measurement/linePrediction.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { VERSION } from '../../version.ts';
import { numberIn, shortened } from '../check/rowJson.ts';
import { type NamedCommit, revisionJson } from '../diff/revision.ts';
import { positionJson } from '../positionJson.ts';
import { followedAt, inUnit } from './trendWords.ts';

/** What `tenths trend --format json` prints. */
export const trendJson = (
  engine: {
    readonly folder: string;
    readonly name: string;
    readonly part: { readonly name: string; readonly mark: string } | undefined;
  },
  trend: Trend,
  at: NamedCommit | undefined,
  unitFor: EngineState['unitFor'],
  exit: 0 | 2,
) => ({
  format: 'tenths.trend',
  version: 2,
  tool: { name: 'tenths', version: VERSION },
  exit,
  at: revisionJson(at),
  engine: { path: engine.folder, name: engine.name },
  part: engine.part === undefined ? null : { name: engine.part.name, mark: engine.part.mark },
  measure: trend.characteristic.id,
  by: trend.axis,
  without_hours: trend.withoutHours.map(({ path }) => path),
  lines: trend.lines.map((line) => lineJson(line, trend, unitFor(line.row))),
  corrected: trend.past.corrected.map((each) => correctionJson(each, trend, unitFor)),
});

function correctionJson(
  { session, row, was, is, held }: Correction,
  trend: Trend,
  unitFor: EngineState['unitFor'],
) {
  const unit = unitFor(row);
  const followed = followedAt(row.position, trend);
  return {
    ...positionJson(row.position),
    session: session.path,
    date: session.date,
    was: numberIn(was[followed], unit),
    is: is === undefined ? null : numberIn(is[followed], unit),
    commit: held.commit,
  };
}

function lineJson(line: TrendLine, { axis, past }: Trend, unit: Unit) {
  const { fit, limits } = line;
  const perX = (slope: number | null): number | null => (slope === null ? null : scaled(slope, unit));
  return {
    ...positionJson(line.row.position),
    label: line.row.position.label ?? null,
    unit: unit.name,
    started_by: line.startedBy ?? null,
    followed: line.followed,
    unlike: line.unlike,
    limits: {
      min: limits.min === undefined ? null : numberIn(limits.min.amount, unit),
      max: limits.max === undefined ? null : numberIn(limits.max.amount, unit),
    },
    points: line.points.map((point) => pointJson(point, axis, unit, past)),
    slope: perX(fit.slope),
    slope_half_width: perX(fit.slopeHalfWidth),
    last: intervalJson(fit.last, unit),
    next: fit.next === null ? null : { x: xJson(fit.next.x, axis), ...intervalJson(fit.next.interval, unit) },
    outlook: outlookJson(fit.outlook, axis),
  };
}

const pointJson = (
  { x, y, u, session }: TrendPoint,
  axis: TrendAxis,
  unit: Unit,
  { removed }: EarlierStates,
) => ({
  x: xJson(x, axis),
  value: shortened(inUnit(y, unit)),
  u: scaled(u, unit),
  session: session.path,
  date: session.date,
  commit: removed.get(session)?.commit ?? null,
});

const scaled = (size: number, unit: Unit): number => shortened(size / toNumber(unit.factor));

const intervalJson = (interval: Interval | null, unit: Unit) =>
  interval === null
    ? null
    : { lower: shortened(inUnit(interval.lower, unit)), upper: shortened(inUnit(interval.upper, unit)) };

/** Hours as a number, a day as text. */
const xJson = (x: number, axis: TrendAxis): number | string => (axis === 'date' ? dayText(x) : shortened(x));

const outlookJson = (outlook: Outlook, axis: TrendAxis) => ({
  kind: outlook.kind,
  side: 'side' in outlook ? outlook.side : null,
  x: outlook.kind === 'reached' ? xJson(outlook.x, axis) : null,
  lower: outlook.kind === 'reached' ? xJson(outlook.interval.lower, axis) : null,
  upper: outlook.kind === 'reached' ? xJson(outlook.interval.upper, axis) : null,
  far: outlook.kind === 'reached' ? outlook.isFar : null,
});
