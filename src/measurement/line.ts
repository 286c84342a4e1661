import { type LineFrame, lineFrame, type Tilt } from './lineFrame.ts';
import { mean, sumOfSquares } from './sample.ts';
import { ALIKE, type Column, dot, whiteningOf } from './whitening.ts';

export interface LinePoint {
  readonly x: number;
  readonly y: number;
  /** Standard uncertainty of what this point alone is off by. Where one point has none, all count alike. */
  readonly own?: number | undefined;
  /** Signed standard uncertainties of errors that other points have as well, by source. */
  readonly shared?: ReadonlyMap<string, number> | undefined;
}

/** One error: what it does to each point, and to the line. */
export interface LineError extends Tilt {
  readonly column: Column;
}

/** A straight line through points. What needs degrees of freedom is null where there are none (two points). */
export interface LineFit {
  readonly slope: number;
  /** The weighted centre. */
  readonly pivot: { readonly x: number; readonly y: number };
  readonly dof: number;
  /**
   * How far the points scatter: their standard deviation where they count alike, else how many times as far as their
   * own uncertainties say, at least once.
   */
  readonly scatter: number | null;
  /** One a point. */
  readonly own: readonly LineError[] | null;
  readonly shared: readonly LineError[];
}

/**
 * Fits y = intercept + slope · x by least squares. Points are weighted by their covariance s²D + S: D of what each is off
 * by itself, s its scatter, S of what several share. So an error that is alike in all of them lifts the line and does not
 * turn it. Null where there are not two different x. Throws a RangeError for what is not finite, or an uncertainty below 0.
 */
export function fitLine(points: readonly LinePoint[]): LineFit | null {
  points.forEach(requirePoint);
  if (points.every(({ x }) => x === points[0]?.x)) return null;
  const height = mean(points.map(({ y }) => y));
  const shared = sharedColumns(points);
  const { frame, line, scatter, own } = balanced(points, shared, height);
  const errorOf = (column: Column): LineError => ({ column, ...frame.through(column) });
  return {
    slope: line.turn,
    pivot: { x: frame.pivot, y: height + line.lift },
    dof: points.length - 2,
    scatter,
    own: scatter === null ? null : own.map((u, index) => errorOf(alone(index, scatter * u, own.length))),
    shared: shared.map(errorOf),
  };
}

/** The fitted y at `x`. */
export const valueAt = ({ pivot, slope }: LineFit, x: number): number => pivot.y + slope * (x - pivot.x);

interface Balanced {
  readonly frame: LineFrame;
  readonly line: Tilt;
  readonly scatter: number | null;
  /** What each point is off by itself, where the scatter is one. */
  readonly own: Column;
}

function balanced(points: readonly LinePoint[], shared: readonly Column[], height: number): Balanced {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y - height);
  const own = points.map((point) => point.own ?? 0);
  return own.includes(0) ? countedAlike(xs, ys) : weighed(xs, ys, own, shared);
}

function countedAlike(xs: Column, ys: Column): Balanced {
  const frame = lineFrame(xs, ALIKE);
  const line = frame.through(ys);
  const dof = xs.length - 2;
  const scatter = dof > 0 ? Math.sqrt(sumOfSquares(frame.residuals(ys, line)) / dof) : null;
  return { frame, line, scatter, own: xs.map(() => 1) };
}

/**
 * The scatter is one, or what makes the residuals as large as their covariance says: r · (s²D + S)⁻¹ r = n − 2. Three readings
 * may lie on a line by luck, closer than any instrument allows, which is no measure of how well the line is known (as for
 * weighted means: the larger of the internal and the external error, after Birge 1932, from memory).
 *
 * Found by Newton's method for the reciprocal of that sum. It is concave in s², so the steps never pass the answer; where
 * nothing is shared it is a straight line, and one step finds it.
 */
function weighed(xs: Column, ys: Column, own: Column, shared: readonly Column[]): Balanced {
  const dof = xs.length - 2;
  const variances = own.map((u) => u * u);
  for (let squared = 1; ; ) {
    const whitening = whiteningOf(
      variances.map((variance) => squared * variance),
      shared,
    );
    const frame = lineFrame(xs, whitening);
    const line = frame.through(ys);
    const weighedResiduals = whitening.weigh(frame.residuals(ys, line));
    const size = dot(frame.residuals(ys, line), weighedResiduals);
    const fall = dot(
      variances,
      weighedResiduals.map((each) => each * each),
    );
    const step = (size * (size / dof - 1)) / fall;
    if (dof === 0 || !(step > squared * SMALLEST_STEP))
      return { frame, line, scatter: dof > 0 ? Math.sqrt(squared) : null, own };
    squared += step;
  }
}

const SMALLEST_STEP = 1e-13;

const alone = (at: number, size: number, count: number): Column =>
  Array.from({ length: count }, (_, index) => (index === at ? size : 0));

function sharedColumns(points: readonly LinePoint[]): readonly Column[] {
  const sources = new Set(points.flatMap(({ shared }) => [...(shared?.keys() ?? [])]));
  return [...sources].map((source) => points.map(({ shared }) => shared?.get(source) ?? 0));
}

function requirePoint({ x, y, own = 0, shared = new Map() }: LinePoint): void {
  if (!Number.isFinite(x) || !Number.isFinite(y)) throw new RangeError(`(${x}, ${y}) is no point of a line`);
  if (!(own >= 0 && own < Number.POSITIVE_INFINITY)) throw new RangeError(`${own} is no uncertainty`);
  for (const [source, u] of shared)
    if (!Number.isFinite(u)) throw new RangeError(`${u} is no uncertainty of ${source}`);
}
