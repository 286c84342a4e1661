import type { Side } from '../checks/judge/sideLimit.ts';
import { fitLine, type LineFit, type LinePoint } from '../measurement/line.ts';
import {
  confidenceInterval,
  type Interval,
  inversePrediction,
  predictionInterval,
  slopeHalfWidth,
} from '../measurement/linePrediction.ts';

/** What can be said of where a line leads. */
export type Outlook =
  | { readonly kind: 'one reading' }
  /** A line goes through any two readings: it shows nothing. */
  | { readonly kind: 'two readings' }
  /** All at the same hours, or on the same day. */
  | { readonly kind: 'no span' }
  /** The slope cannot be told from none. */
  | { readonly kind: 'no trend' }
  | { readonly kind: 'no limit' }
  | { readonly kind: 'away'; readonly side: Side }
  | { readonly kind: 'beyond'; readonly side: Side }
  | LimitCrossing;

/** Where the line meets its limit, with the interval that Fieller's theorem gives (95 %). */
export interface LimitCrossing {
  readonly kind: 'reached';
  readonly side: Side;
  readonly x: number;
  readonly interval: Interval;
  /** Farther ahead than the readings reach back: a line says little there. */
  readonly isFar: boolean;
}

export interface TrendFit {
  /** Null where there are not two different x. */
  readonly line: LineFit | null;
  /** Change of y for one x, and the half-width of its 95 % interval; null without degrees of freedom. */
  readonly slope: number | null;
  readonly slopeHalfWidth: number | null;
  /** The line itself at the last reading. */
  readonly last: Interval | null;
  /** Where the next reading will lie, as far ahead as the readings lie apart. */
  readonly next: { readonly x: number; readonly interval: Interval } | null;
  readonly outlook: Outlook;
}

export const CONFIDENCE = 0.95;

/** A straight line and what it says of the limits. Points are sorted by x. */
export function fitTrend(
  points: readonly LinePoint[],
  limits: Readonly<Record<Side, number | undefined>>,
): TrendFit {
  const line = fitLine(points);
  const last = points.at(-1);
  const nothing = { line, slope: line?.slope ?? null, slopeHalfWidth: null, last: null, next: null };
  if (last === undefined || points.length < 2) return { ...nothing, outlook: { kind: 'one reading' } };
  if (line === null) return { ...nothing, outlook: { kind: 'no span' } };
  const halfWidth = slopeHalfWidth(line, CONFIDENCE);
  if (halfWidth === null) return { ...nothing, outlook: { kind: 'two readings' } };
  const nextX = last.x + (last.x - (points[0]?.x ?? last.x)) / (points.length - 1);
  const next = predictionInterval(line, nextX, CONFIDENCE).interval;
  return {
    line,
    slope: line.slope,
    slopeHalfWidth: halfWidth,
    last: confidenceInterval(line, last.x, CONFIDENCE).interval,
    next: next && { x: nextX, interval: next },
    outlook: outlookOf(line, halfWidth, points, limits),
  };
}

function outlookOf(
  line: LineFit,
  halfWidth: number,
  points: readonly LinePoint[],
  limits: Readonly<Record<Side, number | undefined>>,
): Outlook {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return { kind: 'one reading' };
  for (const side of ['min', 'max'] as const) {
    const limit = limits[side];
    if (limit !== undefined && (side === 'max' ? last.y > limit : last.y < limit))
      return { kind: 'beyond', side };
  }
  if (Math.abs(line.slope) <= halfWidth) return { kind: 'no trend' };
  const side = line.slope > 0 ? 'max' : 'min';
  const limit = limits[side];
  if (limit === undefined) {
    const other = side === 'max' ? 'min' : 'max';
    return limits[other] === undefined ? { kind: 'no limit' } : { kind: 'away', side: other };
  }
  const { x, interval } = inversePrediction(line, limit, CONFIDENCE);
  if (x === null || interval === null) return { kind: 'no trend' };
  return { kind: 'reached', side, x, interval, isFar: x - last.x > last.x - first.x };
}
