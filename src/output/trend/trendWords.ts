import { limitText, type Printing, printingOf } from '../../checks/findings/readings.ts';
import type { EngineState } from '../../compare/state.ts';
import { dayText, type Trend, type TrendAxis, type TrendLine } from '../../compare/trend.ts';
import type { LimitCrossing } from '../../compare/trendFit.ts';
import type { Followed } from '../../compare/trendPoint.ts';
import type { Position } from '../../layout/position.ts';
import { formatUncertainty } from '../../quantity/format.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';

/** The digits of the finest reading of a line. */
export function printingOfLine({ points, row }: TrendLine, unitFor: EngineState['unitFor']): Printing {
  const all = [row, ...points.map((point) => point.row)].map((each) => printingOf(each, unitFor));
  return { unit: unitFor(row), decimals: Math.max(...all.map(({ decimals }) => decimals)) };
}

export const heightText = (y: number, { unit, decimals }: Printing): string =>
  inUnit(y, unit).toFixed(decimals);

/** A height as a double in the unit. */
export const inUnit = (y: number, unit: Unit): number =>
  (y - toNumber(unit.zero ?? { n: 0n, d: 1n })) / toNumber(unit.factor);

/** How many x the rate is given for: people speak of a thousand hours, and of a year. */
const PER: Readonly<Record<TrendAxis, { readonly x: number; readonly name: string }>> = {
  hours: { x: 1000, name: 'a 1000 h' },
  date: { x: 365.25, name: 'a year' },
};

/** `+0.00012 ±0.00003 a 1000 h`; empty where two readings or fewer show none. */
export function rateText({ fit }: TrendLine, axis: TrendAxis, { unit }: Printing): string {
  if (fit.slope === null || fit.slopeHalfWidth === null) return '';
  const { x, name } = PER[axis];
  const half = formatUncertainty(fit.slopeHalfWidth * x, unit);
  const decimals = half.includes('.') ? half.length - half.indexOf('.') - 1 : 0;
  const rate = (fit.slope * x) / toNumber(unit.factor);
  return `${rate < 0 ? '−' : '+'}${Math.abs(rate).toFixed(decimals)} ±${half} ${name}`;
}

/** An x as it is said: hours in whole steps that fit how well they are known, or a day. */
export function xText(x: number, axis: TrendAxis, width = 1): string {
  if (axis === 'date') return dayText(x);
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, width))) - 1);
  return `${(Math.round(x / step) * step).toString().replace(/\B(?=(\d{3})+$)/g, ' ')} h`;
}

/** What can be said of where the line leads. */
export function outlookText(line: TrendLine, axis: TrendAxis, printing: Printing): string {
  const { outlook } = line.fit;
  const limit = (side: 'min' | 'max'): string => limitName(line, side, printing);
  switch (outlook.kind) {
    case 'one reading':
      return 'one reading shows no trend';
    case 'two readings':
      return 'two readings show no trend: a third is needed';
    case 'no span':
      return axis === 'hours' ? 'all at the same hours' : 'all on the same day';
    case 'no trend':
      return 'no trend can be shown';
    case 'no limit':
      return 'no limit is stated';
    case 'away':
      return `moves away from ${limit(outlook.side)}`;
    case 'beyond':
      return `is beyond ${limit(outlook.side)}`;
    case 'reached':
      return reachedText(outlook, line, axis, limit(outlook.side));
  }
}

function reachedText(
  { x, interval, isFar }: LimitCrossing,
  { points }: TrendLine,
  axis: TrendAxis,
  limit: string,
): string {
  const now = points.at(-1)?.x ?? x;
  const width = interval.upper - interval.lower;
  const from = interval.lower <= now ? 'now' : xText(interval.lower, axis, width);
  const range = `(${from} to ${xText(interval.upper, axis, width)})`;
  const far = isFar ? ', farther ahead than the readings reach back' : '';
  return x <= now
    ? `reaches ${limit} about now ${range}`
    : `reaches ${limit} at about ${xText(x, axis, width)} ${range}${far}`;
}

/** `wear max 0.0050`. */
export function limitName({ limits }: TrendLine, side: 'min' | 'max', printing: Printing): string {
  const limit = limits[side];
  return limit === undefined ? '' : limitText(side, limit, printing);
}

/** In what the readings of a line differ, with the words of each. */
export function unlikeReadings({ points, unlike }: TrendLine): string {
  const routes = points.flatMap(({ row }) => row.routes[0]?.route ?? []);
  const words: Readonly<Record<string, readonly string[]>> = {
    method: routes.map(({ name }) => name),
    instrument: routes.map((route) => route.with.join(' and ')),
    conditions: [],
    temperature: points.flatMap(({ session }) => session.temperature?.written ?? []),
  };
  return unlike
    .map((each) => [`other ${each}`, [...new Set(words[each] ?? [])].join(', ')].filter(Boolean).join(': '))
    .join('; ');
}

/** Which of the readings at a position are followed; the mean where no line leads there. */
export const followedAt = (position: Position, { lines }: Trend): Followed =>
  lines.findLast(({ row }) => row.position.key === position.key)?.followed ?? 'mean';
