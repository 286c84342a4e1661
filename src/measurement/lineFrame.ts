import { mean } from './sample.ts';
import { type Column, dot, type Whitening } from './whitening.ts';

/** A line by its height at the pivot of its frame, and its slope. */
export interface Tilt {
  readonly lift: number;
  readonly turn: number;
}

/** All straight lines over the same x with the same covariance. */
export interface LineFrame {
  /** The weighted centre of the x. */
  readonly pivot: number;
  /** The line of least squares through heights. */
  readonly through: (heights: Column) => Tilt;
  /** Heights less those of a line. */
  readonly residuals: (heights: Column, line: Tilt) => Column;
}

/** Sums about the centre, as NIST's reference sets need. */
export function lineFrame(xs: Column, { whiten }: Whitening): LineFrame {
  const middle = mean(xs);
  const level = whiten(xs.map(() => 1));
  const offset = dot(level, whiten(xs.map((x) => x - middle))) / dot(level, level);
  const across = xs.map((x) => x - middle - offset);
  const rising = whiten(across);
  const share = (direction: Column, heights: Column): number =>
    dot(direction, whiten(heights)) / dot(direction, direction);
  return {
    pivot: middle + offset,
    through: (heights) => ({ lift: share(level, heights), turn: share(rising, heights) }),
    residuals: (heights, { lift, turn }) =>
      heights.map((height, index) => height - lift - turn * (across[index] ?? Number.NaN)),
  };
}
