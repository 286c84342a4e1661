import { sum } from './sample.ts';

export interface LinePoint {
  readonly x: number;
  readonly y: number;
  /** Relative weight, above zero: 1/u² for readings of known uncertainty. Without weights all count alike. */
  readonly weight?: number | undefined;
}

/** Where the line turns when its slope is off: the weighted centre, or the origin it was made to pass through. */
export interface Pivot {
  readonly x: number;
  readonly y: number;
  /** Variance of the line here, in parts of the residual variance: 1/n, or 0 at a fixed origin. */
  readonly share: number;
}

/**
 * A straight line through points. The weights are scaled to a mean of one, so that the residual deviation is that
 * of a reading of mean weight. What needs degrees of freedom is null where there are none (two points).
 */
export interface LineFit {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptUncertainty: number | null;
  readonly slopeUncertainty: number | null;
  /** Correlation of intercept and slope; 0 for a line through the origin. */
  readonly correlation: number;
  readonly residualDeviation: number | null;
  readonly dof: number;
  /** Measured less fitted y, in the order of the points, unweighted. */
  readonly residuals: readonly number[];
  readonly pivot: Pivot;
  /** Σ w (x − pivot.x)². */
  readonly sxx: number;
}

/**
 * Fits y = intercept + slope · x by (weighted) least squares. Null where the points do not make a line: fewer than
 * two different x, or through the origin none but x = 0. Throws a RangeError for what is not finite, or a weight
 * that is not above zero. Sums about the centre, as NIST's reference sets need.
 */
export function fitLine(
  points: readonly LinePoint[],
  { throughOrigin = false }: { readonly throughOrigin?: boolean } = {},
): LineFit | null {
  const weighted = scaleWeights(points);
  if (!makesLine(points, throughOrigin)) return null;
  const pivot = throughOrigin ? ORIGIN : centreOf(weighted);
  const sxx = sum(weighted.map(({ x, weight }) => weight * (x - pivot.x) ** 2));
  const sxy = sum(weighted.map(({ x, y, weight }) => weight * (x - pivot.x) * (y - pivot.y)));
  const slope = sxy / sxx;
  const residuals = weighted.map(({ x, y }) => y - pivot.y - slope * (x - pivot.x));
  const variance = sum(residuals.map((residual, index) => (weighted[index]?.weight ?? 0) * residual ** 2));
  const dof = weighted.length - (throughOrigin ? 1 : 2);
  const residualDeviation = dof > 0 ? Math.sqrt(variance / dof) : null;
  return {
    slope,
    residuals,
    pivot,
    sxx,
    dof,
    residualDeviation,
    ...intercept(slope, pivot, sxx, residualDeviation),
  };
}

/** Asked of the x as given: a spread about a rounded centre need not be exactly zero. */
function makesLine(points: readonly LinePoint[], throughOrigin: boolean): boolean {
  const first = throughOrigin ? 0 : points[0]?.x;
  return points.some(({ x }) => x !== first);
}

const ORIGIN: Pivot = { x: 0, y: 0, share: 0 };

/** Variance of the line at `x`, in parts of the residual variance. */
export const lineShare = ({ pivot, sxx }: Pick<LineFit, 'pivot' | 'sxx'>, x: number): number =>
  pivot.share + (x - pivot.x) ** 2 / sxx;

/** The fitted y at `x`. */
export const valueAt = ({ pivot, slope }: LineFit, x: number): number => pivot.y + slope * (x - pivot.x);

function intercept(slope: number, pivot: Pivot, sxx: number, deviation: number | null) {
  const atZero = Math.sqrt(lineShare({ pivot, sxx }, 0));
  return {
    intercept: pivot.y - slope * pivot.x,
    interceptUncertainty: deviation === null ? null : deviation * atZero,
    slopeUncertainty: deviation === null ? null : deviation / Math.sqrt(sxx),
    correlation: atZero === 0 ? 0 : -pivot.x / Math.sqrt(sxx) / atZero,
  };
}

type WeightedPoint = LinePoint & { readonly weight: number };

function scaleWeights(points: readonly LinePoint[]): readonly WeightedPoint[] {
  const total = sum(points.map(({ weight = 1 }) => weight));
  return points.map(({ x, y, weight = 1 }) => {
    if (!Number.isFinite(x) || !Number.isFinite(y))
      throw new RangeError(`(${x}, ${y}) is no point of a line`);
    if (!(weight > 0 && weight < Number.POSITIVE_INFINITY)) throw new RangeError(`${weight} is no weight`);
    return { x, y, weight: (weight * points.length) / total };
  });
}

function centreOf(points: readonly WeightedPoint[]): Pivot {
  const average = (coordinate: 'x' | 'y'): number => {
    const first = sum(points.map((point) => point.weight * point[coordinate])) / points.length;
    // A second pass takes back the rounding of the first, as for a mean.
    return first + sum(points.map((point) => point.weight * (point[coordinate] - first))) / points.length;
  };
  return { x: average('x'), y: average('y'), share: 1 / points.length };
}
