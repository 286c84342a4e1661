import { twoSidedT } from './distributions/studentT.ts';
import { type LineError, type LineFit, valueAt } from './line.ts';
import { sum } from './sample.ts';

export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

/** The line at an x. Two points leave no degrees of freedom: `u` and `interval` are null then. */
export interface LineEstimate {
  readonly value: number;
  /** Standard uncertainty of what was asked for: the line, or a new reading. */
  readonly u: number | null;
  readonly interval: Interval | null;
}

/** Where the line itself lies at `x`, with the two-sided `confidence`. */
export const confidenceInterval = (fit: LineFit, x: number, confidence = 0.95): LineEstimate =>
  estimate(fit, x, (error) => heightAt(fit, error, x), 0, confidence);

/**
 * Where a new reading at `x` will lie, with the two-sided `confidence`. It is taken as the last one was: what that one
 * shares with the line moves both alike.
 */
export const predictionInterval = (fit: LineFit, x: number, confidence = 0.95): LineEstimate =>
  estimate(fit, x, (error) => heightAt(fit, error, x) - lastOf(error), lastOf(fit.own?.at(-1)), confidence);

const heightAt = ({ pivot }: LineFit, { lift, turn }: LineError, x: number): number =>
  lift + turn * (x - pivot.x);

const lastOf = (error: LineError | undefined): number => error?.column.at(-1) ?? 0;

function estimate(
  fit: LineFit,
  x: number,
  sharedOffset: (error: LineError) => number,
  newReading: number,
  confidence: number,
): LineEstimate {
  const value = valueAt(fit, x);
  if (fit.own === null) return { value, u: null, interval: null };
  const own = Math.hypot(newReading, ...fit.own.map((error) => heightAt(fit, error, x)));
  const shared = Math.hypot(...fit.shared.map(sharedOffset));
  const factors = factorsAt(fit, confidence);
  const half = Math.hypot(factors.own * own, factors.shared * shared);
  return { value, u: Math.hypot(own, shared), interval: { lower: value - half, upper: value + half } };
}

/** The scatter of the points tells how far they are off by themselves; what they share is known from elsewhere. */
const factorsAt = ({ dof }: LineFit, confidence: number) => ({
  own: twoSidedT(confidence, dof),
  shared: twoSidedT(confidence, Number.POSITIVE_INFINITY),
});

/** Half the width of the interval of the slope, with the two-sided `confidence`; null without degrees of freedom. */
export function slopeHalfWidth(fit: LineFit, confidence = 0.95): number | null {
  const squares = squaredWidth(fit, confidence);
  return squares && Math.sqrt(squares.turn);
}

/** The squared half-width of the line, `lift + 2 · both · d + turn · d²` at a distance d from the pivot. */
function squaredWidth({ own, shared, ...fit }: LineFit, confidence: number) {
  if (own === null) return null;
  const factors = factorsAt({ own, shared, ...fit }, confidence);
  const total = (of: (error: LineError) => number): number =>
    factors.own ** 2 * sum(own.map(of)) + factors.shared ** 2 * sum(shared.map(of));
  return {
    lift: total(({ lift }) => lift * lift),
    both: total(({ lift, turn }) => lift * turn),
    turn: total(({ turn }) => turn * turn),
  };
}

/** The x at which the line reaches a y, null for a level line. `interval` is null, with the reason, where none can be given. */
export interface InversePrediction {
  readonly x: number | null;
  readonly interval: Interval | null;
  /** Fieller's g: the squared ratio of the slope's half-width to the slope. */
  readonly g: number | null;
  readonly reason: 'no degrees of freedom' | 'slope not significant' | null;
}

/**
 * Inverse prediction of a fixed limit by Fieller's theorem, as Graybill & Iyer, "Regression Analysis" (1994), chapter 6,
 * work it. With g ≥ 1 the slope cannot be told from zero at this confidence, and no finite interval exists: no date may
 * be named then.
 */
export function inversePrediction(fit: LineFit, limit: number, confidence = 0.95): InversePrediction {
  const x = fit.slope === 0 ? null : fit.pivot.x + (limit - fit.pivot.y) / fit.slope;
  const squares = squaredWidth(fit, confidence);
  if (squares === null) return { x, interval: null, g: null, reason: 'no degrees of freedom' };
  const g = x === null ? Number.POSITIVE_INFINITY : squares.turn / fit.slope ** 2;
  if (x === null || g >= 1) return { x, interval: null, g, reason: 'slope not significant' };
  return { x, interval: fieller(fit, x, g, squares), g, reason: null };
}

function fieller(
  { pivot, slope }: LineFit,
  x: number,
  g: number,
  { lift, both, turn }: { readonly lift: number; readonly both: number; readonly turn: number },
): Interval {
  const distance = x - pivot.x;
  const atX = lift + 2 * both * distance + turn * distance ** 2;
  const squared = (atX - (lift * turn - both ** 2) / slope ** 2) / slope ** 2;
  // Of a line without any error rounding may leave less than nothing.
  const half = Math.sqrt(Math.max(0, squared)) / (1 - g);
  const middle = x + (both + turn * distance) / slope ** 2 / (1 - g);
  return { lower: middle - half, upper: middle + half };
}
