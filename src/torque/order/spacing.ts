/** A place in the plane of the joint: x along it, y across it. */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/**
 * Distances that differ by less than this share of the closest spacing are equal: positions may be measured by
 * hand. More than this would call rings of a large head equal that are not.
 */
export const EQUAL_SHARE = 0.01;

/** Fasteners out of line by less than this share of the closest spacing still stand in one row, or on one cap. */
export const IN_LINE_SHARE = 0.25;

export const apart = (a: PlanePoint, b: PlanePoint): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The least distance between two of them; 1 where there is only one. */
export function closestSpacing(points: readonly PlanePoint[]): number {
  let closest = Number.POSITIVE_INFINITY;
  for (const [index, a] of points.entries()) {
    for (const b of points.slice(index + 1)) {
      const gap = apart(a, b);
      if (gap > 0 && gap < closest) closest = gap;
    }
  }
  return Number.isFinite(closest) ? closest : 1;
}

/** Halfway between the outermost: a joint with one fastener more at an end keeps its middle. */
export function middleOf(points: readonly PlanePoint[]): PlanePoint {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
}

/** Those whose measure is the greatest, or equal to it, in the order they stand. */
export function greatestBy<T>(
  choice: readonly T[],
  measure: (each: T) => number,
  spacing: number,
): readonly T[] {
  const greatest = Math.max(...choice.map(measure));
  return choice.filter((each) => measure(each) >= greatest - EQUAL_SHARE * spacing);
}
