import type { Side } from '../checks/judge/verdict.ts';
import { twoSidedT } from '../measurement/distributions/studentT.ts';
import { fitLine, type LineFit, type LinePoint } from '../measurement/line.ts';
import {
  confidenceInterval,
  type Interval,
  inversePrediction,
  predictionInterval,
} from '../measurement/linePrediction.ts';

/** A reading as the fit takes it: y and its standard uncertainty in one unit. */
export interface Reading {
  readonly x: number;
  readonly y: number;
  readonly u: number;
}

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

/** A weighted straight line (weights 1/u²) and what it says of the limits. Points are sorted by x. */
export function fitTrend(
  points: readonly Reading[],
  limits: Readonly<Record<Side, number | undefined>>,
): TrendFit {
  const line = lineThrough(points);
  const last = points.at(-1);
  const nothing = { line, slope: line?.slope ?? null, slopeHalfWidth: null, last: null, next: null };
  if (last === undefined || points.length < 2) return { ...nothing, outlook: { kind: 'one reading' } };
  if (line === null) return { ...nothing, outlook: { kind: 'no span' } };
  if (line.slopeUncertainty === null) return { ...nothing, outlook: { kind: 'two readings' } };
  const apart = (last.x - (points[0]?.x ?? last.x)) / (points.length - 1);
  const next = predictionInterval(line, last.x + apart, CONFIDENCE).interval;
  return {
    line,
    slope: line.slope,
    slopeHalfWidth: twoSidedT(CONFIDENCE, line.dof) * line.slopeUncertainty,
    last: confidenceInterval(line, last.x, CONFIDENCE).interval,
    next: next && { x: last.x + apart, interval: next },
    outlook: outlookOf(line, points, limits),
  };
}

/** Weighted by 1/u² where every reading has an uncertainty, else all alike. */
function lineThrough(points: readonly Reading[]): LineFit | null {
  const isWeighted = points.every(({ u }) => u > 0);
  const weighted = points.map(
    ({ x, y, u }): LinePoint => (isWeighted ? { x, y, weight: 1 / (u * u) } : { x, y }),
  );
  const line = fitLine(weighted);
  return line === null || !isWeighted ? line : notBelowInstruments(line, points);
}

/**
 * Three readings may lie on a line by luck, closer than any instrument allows. Their scatter is then no measure of
 * how well the line is known, and the uncertainty of a reading of mean weight stands for it (as for weighted means:
 * the larger of the internal and the external error, after Birge 1932, from memory).
 */
function notBelowInstruments(line: LineFit, points: readonly Reading[]): LineFit {
  const meanWeight = points.reduce((sum, { u }) => sum + 1 / (u * u), 0) / points.length;
  const internal = 1 / Math.sqrt(meanWeight);
  const { residualDeviation, interceptUncertainty, slopeUncertainty } = line;
  if (residualDeviation === null || slopeUncertainty === null || interceptUncertainty === null) return line;
  if (residualDeviation >= internal) return line;
  return {
    ...line,
    residualDeviation: internal,
    slopeUncertainty: internal / Math.sqrt(line.sxx),
    interceptUncertainty: internal * Math.sqrt(line.pivot.share + line.pivot.x ** 2 / line.sxx),
  };
}

function outlookOf(
  line: LineFit,
  points: readonly Reading[],
  limits: Readonly<Record<Side, number | undefined>>,
): Outlook {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return { kind: 'one reading' };
  for (const side of ['min', 'max'] as const) {
    const limit = limits[side];
    if (limit !== undefined && (side === 'max' ? last.y > limit : last.y < limit))
      return { kind: 'beyond', side };
  }
  const reach = twoSidedT(CONFIDENCE, line.dof) * (line.slopeUncertainty ?? 0);
  if (Math.abs(line.slope) <= reach) return { kind: 'no trend' };
  const side = line.slope > 0 ? 'max' : 'min';
  const limit = limits[side];
  if (limit === undefined) {
    const other = side === 'max' ? 'min' : 'max';
    return limits[other] === undefined ? { kind: 'no limit' } : { kind: 'away', side: other };
  }
  const { x, interval } = inversePrediction(line, { limit }, CONFIDENCE);
  if (x === null || interval === null) return { kind: 'no trend' };
  return { kind: 'reached', side, x, interval, isFar: x - last.x > last.x - first.x };
}
