import type { EngineState } from '../../compare/state.ts';
import type { Trend, TrendLine } from '../../compare/trend.ts';
import { valueAt } from '../../measurement/line.ts';
import { confidenceInterval, type Interval } from '../../measurement/linePrediction.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { positionText } from '../check/view/rowView.ts';
import type { TrendPicture, TrendPictureLine } from '../page/pictures/trend.ts';
import { type heightText, inUnit, limitName, outlookText, printingOfLine, xText } from './trendWords.ts';

const STEPS = 12;

/** A line of a trend with what stands beside it: the other lines of its position, limits, when one is reached. */
export function drawnTrend(pressing: TrendLine, trend: Trend, unitFor: EngineState['unitFor']): TrendPicture {
  const { axis, characteristic, lines } = trend;
  const printing = printingOfLine(pressing, unitFor);
  const height = (y: number): number => inUnit(y, printing.unit);
  const own = lines.filter(({ row }) => row.position.key === pressing.row.position.key);
  const xs = own.flatMap(({ points }) => points.map(({ x }) => x));
  const [first, last] = [Math.min(...xs), Math.max(...xs)];
  const { outlook } = pressing.fit;
  const forecast = outlook.kind === 'reached' ? outlook.interval : undefined;
  const until = forecast === undefined ? last : untilOf(first, last, forecast);
  const limits = (['min', 'max'] as const).flatMap((side) => {
    const limit = pressing.limits[side];
    return limit === undefined
      ? []
      : [{ y: height(toNumber(limit.amount)), text: limitName(pressing, side, printing) }];
  });
  const drawn = own.map((line) => lineDrawn(line, until, printing.unit));
  const ys = [...limits.map(({ y }) => y), ...drawn.flatMap(({ points }) => points.map(({ y }) => y))];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const yText = (y: number): string => y.toFixed(printing.decimals);
  return {
    kind: 'trend',
    title: [characteristic.label, positionText(pressing.row)].filter(Boolean).join(' '),
    description: outlookDescription(pressing, trend, last, printing),
    lines: drawn,
    limits,
    forecast: forecast && {
      from: forecast.lower,
      to: forecast.upper,
      text: forecastText(pressing, forecast, trend, last, printing),
    },
    x: {
      from: first,
      to: until,
      fromText: xText(first, axis),
      toText: xText(until, axis, (until - first) / 10),
    },
    y: { from: low, to: high, fromText: yText(low), toText: yText(high) },
  };
}

/** As far ahead as the readings reach back; farther where the forecast only begins there. */
const untilOf = (first: number, last: number, { lower, upper }: Interval): number =>
  Math.max(last, Math.min(upper, Math.max(last + (last - first), lower + (lower - first) * BEYOND)));

const BEYOND = 0.15;

/** The same words as `trend`, but for when a limit is reached: an interval alone. */
function outlookDescription(
  line: TrendLine,
  trend: Trend,
  now: number,
  printing: Parameters<typeof heightText>[1],
): string {
  const { outlook } = line.fit;
  if (outlook.kind !== 'reached') return outlookText(line, trend.axis, printing);
  const far = outlook.isFar ? ', farther ahead than the readings reach back' : '';
  return `reaches ${forecastText(line, outlook.interval, trend, now, printing)}${far}`;
}

/** An interval, never a point. */
function forecastText(
  line: TrendLine,
  { lower, upper }: Interval,
  { axis }: Trend,
  now: number,
  printing: Parameters<typeof heightText>[1],
): string {
  const { outlook } = line.fit;
  const limit = outlook.kind === 'reached' ? limitName(line, outlook.side, printing) : '';
  const from = lower <= now ? 'now' : xText(lower, axis, upper - lower);
  return `${limit} between ${from} and ${xText(upper, axis, upper - lower)} (95 %)`;
}

function lineDrawn(line: TrendLine, until: number, unit: Parameters<typeof inUnit>[1]): TrendPictureLine {
  const { points, fit, startedBy } = line;
  const factor = toNumber(unit.factor);
  return {
    startedBy,
    points: points.map(({ x, y, row }) => ({
      x,
      y: inUnit(y, unit),
      uncertainty: (row.routes[0]?.route.expanded ?? 0) / factor,
    })),
    course: courseOf(fit, points[0]?.x ?? 0, until, (y) => inUnit(y, unit)),
  };
}

function courseOf(
  { line, outlook }: TrendLine['fit'],
  from: number,
  until: number,
  height: (y: number) => number,
): TrendPictureLine['course'] {
  const isDrawn =
    line !== null && !['one reading', 'two readings', 'no span', 'no trend'].includes(outlook.kind);
  if (!isDrawn || line === null) return [];
  return Array.from({ length: STEPS + 1 }, (_, index) => {
    const x = from + ((until - from) * index) / STEPS;
    const y = valueAt(line, x);
    const { interval } = confidenceInterval(line, x);
    return { x, y: height(y), lower: height(interval?.lower ?? y), upper: height(interval?.upper ?? y) };
  });
}
