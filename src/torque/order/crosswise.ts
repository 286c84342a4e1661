import { apart, closestSpacing, greatestBy, type PlanePoint } from './spacing.ts';

/**
 * Crosswise, as a star: each next fastener leaves the widest gap to those already tightened, and of such ones
 * it is the farthest from the last. So neighbours follow each other only where nothing else is left.
 */
export function crosswise<T extends PlanePoint>(points: readonly T[]): readonly T[] {
  const spacing = closestSpacing(points);
  const done: T[] = [];
  for (let left = points; left.length > 0; ) {
    const next = nextAcross(done, left, spacing);
    done.push(...next);
    left = left.filter((each) => !next.includes(each));
  }
  return done;
}

/** The next one, in a list. */
function nextAcross<T extends PlanePoint>(
  done: readonly T[],
  left: readonly T[],
  spacing: number,
): readonly T[] {
  const last = done.at(-1);
  if (last === undefined) return left.slice(0, 1);
  const gap = (each: T): number => Math.min(...done.map((other) => apart(each, other)));
  const widest = greatestBy(left, gap, spacing);
  return greatestBy(widest, (each) => apart(each, last), spacing).slice(0, 1);
}
