import { twoSidedT } from './distributions/studentT.ts';
import { type LineFit, lineShare, valueAt } from './line.ts';
import { mean, sumOfSquares } from './sample.ts';

export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

/** The line at an x. Two points leave no degrees of freedom: `u` and `interval` are null then. */
export interface LineEstimate {
  readonly value: number;
  /** Standard uncertainty of what was asked for: the line, or new readings. */
  readonly u: number | null;
  readonly interval: Interval | null;
}

/** Where the line itself lies at `x`, with the two-sided `confidence`. */
export const confidenceInterval = (fit: LineFit, x: number, confidence = 0.95): LineEstimate =>
  estimate(fit, x, confidence, 0);

/** Where the mean of so many new readings of mean weight at `x` will lie, with the two-sided `confidence`. */
export const predictionInterval = (fit: LineFit, x: number, confidence = 0.95, readings = 1): LineEstimate =>
  estimate(fit, x, confidence, 1 / readings);

function estimate(fit: LineFit, x: number, confidence: number, ownShare: number): LineEstimate {
  const value = valueAt(fit, x);
  if (fit.residualDeviation === null) return { value, u: null, interval: null };
  const u = fit.residualDeviation * Math.sqrt(ownShare + lineShare(fit, x));
  const half = twoSidedT(confidence, fit.dof) * u;
  return { value, u, interval: { lower: value - half, upper: value + half } };
}

/** What y the line is asked to reach: a fixed limit, or the mean of new readings of mean weight at one unknown x. */
export type Target = { readonly limit: number } | { readonly readings: readonly number[] };

/**
 * The x at which the line reaches a y. `x` is null for a level line. `interval` is null, with the reason, where
 * there is none to give; `standardUncertainty` is that of x for a well-determined slope (Wald's).
 */
export interface InversePrediction {
  readonly x: number | null;
  readonly standardUncertainty: number | null;
  readonly interval: Interval | null;
  /** Fieller's g: the squared ratio of the slope's half-width to the slope. */
  readonly g: number | null;
  readonly dof: number;
  readonly reason: 'no degrees of freedom' | 'slope not significant' | null;
}

/**
 * Inverse prediction by Fieller's theorem, as Graybill & Iyer, "Regression Analysis" (1994), chapter 6, work it. New
 * readings add their own scatter to the residual variance. With g ≥ 1 the slope cannot be told from zero at this
 * confidence, and no finite interval exists: no date may be named then.
 */
export function inversePrediction(fit: LineFit, target: Target, confidence = 0.95): InversePrediction {
  const { y, ownShare, dof, deviation } = readTarget(fit, target);
  const x = fit.slope === 0 ? null : fit.pivot.x + (y - fit.pivot.y) / fit.slope;
  if (deviation === null) return { ...NO_INTERVAL, x, dof, reason: 'no degrees of freedom' };
  if (x === null)
    return { ...NO_INTERVAL, x, dof, g: Number.POSITIVE_INFINITY, reason: 'slope not significant' };
  const inX = deviation / Math.abs(fit.slope);
  const standardUncertainty = inX * Math.sqrt(ownShare + lineShare(fit, x));
  const reach = twoSidedT(confidence, dof) * inX;
  const g = reach ** 2 / fit.sxx;
  if (g >= 1) return { x, standardUncertainty, interval: null, g, dof, reason: 'slope not significant' };
  return { x, standardUncertainty, interval: fieller(fit, x, reach, g, ownShare), g, dof, reason: null };
}

const NO_INTERVAL = { standardUncertainty: null, interval: null, g: null } as const;

function fieller(fit: LineFit, x: number, reach: number, g: number, ownShare: number): Interval {
  const fromPivot = x - fit.pivot.x;
  const constant = (1 - g) * (ownShare + fit.pivot.share);
  const half = (reach * Math.sqrt(fromPivot ** 2 / fit.sxx + constant)) / (1 - g);
  const middle = x + (fromPivot * g) / (1 - g);
  return { lower: middle - half, upper: middle + half };
}

function readTarget(fit: LineFit, target: Target) {
  const { dof: lineDof, residualDeviation } = fit;
  if ('limit' in target) return { y: target.limit, ownShare: 0, dof: lineDof, deviation: residualDeviation };
  const count = target.readings.length;
  const y = mean(target.readings);
  const dof = lineDof + count - 1;
  // The scatter of new readings alone says nothing about the line: two points stay without an interval.
  if (residualDeviation === null) return { y, ownShare: 1 / count, dof: lineDof, deviation: null };
  const scatter = sumOfSquares(target.readings.map((reading) => reading - y));
  return {
    y,
    ownShare: 1 / count,
    dof,
    deviation: Math.sqrt((lineDof * residualDeviation ** 2 + scatter) / dof),
  };
}
