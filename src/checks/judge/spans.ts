import { compare, type Fraction } from '../../quantity/fraction.ts';

/** What one point may be: from one end to the other, without an upper one for `over 0.006`, and alike for a number. */
export interface PointRange {
  readonly from: Fraction;
  readonly to: Fraction | undefined;
}

/** How a span lies to a limit: a range that only ends on it lies wholly on its side. */
export function standing(
  { from, to }: PointRange,
  side: 'min' | 'max',
  limit: Fraction,
): 'inside' | 'across' | 'beyond' {
  const low = compare(from, limit);
  const high = to === undefined ? Number.POSITIVE_INFINITY : compare(to, limit);
  const [near, far] = side === 'max' ? [low, high] : [-high, -low];
  if (near > 0 || (near === 0 && far > 0)) return 'beyond';
  return far > 0 ? 'across' : 'inside';
}
