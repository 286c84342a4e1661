import {
  apart,
  closestSpacing,
  EQUAL_SHARE,
  greatestBy,
  IN_LINE_SHARE,
  middleOf,
  type PlanePoint,
} from './spacing.ts';

/**
 * From the centre outwards (common practice, no source). Fasteners as far out as each other form a ring; in
 * a ring the one farthest from the last tightened comes next, so that sides change, and a neighbour of the
 * last on its own side only where the ring has no other.
 */
export const centreOut = <T extends PlanePoint>(points: readonly T[]): readonly T[] =>
  walk(ringsAbout(middleOf(points), points), points);

/**
 * Caps from the middle one outwards, to either end in turn; on a cap from the inside out, left and right in
 * turn, so that each cap goes down level (common practice, no source).
 */
export function capByCap<T extends PlanePoint>(points: readonly T[]): readonly T[] {
  const { y } = middleOf(points);
  const rings = centreOut(capsAlong(points)).flatMap((cap) => ringsAbout({ x: cap.x, y }, cap.members));
  return walk(rings, points);
}

/** In one row along the joint, with no fastener of that row between them. */
export function areNeighboursOfOneSide(
  a: PlanePoint,
  b: PlanePoint,
  all: readonly PlanePoint[],
  spacing: number,
): boolean {
  const inRow = (each: PlanePoint): boolean => Math.abs(each.y - a.y) <= IN_LINE_SHARE * spacing;
  const [from, to] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  return inRow(b) && !all.some((each) => inRow(each) && each.x > from && each.x < to);
}

/** Ring after ring, from each ring the fastener that suits the last one best. */
function walk<T extends PlanePoint>(rings: readonly (readonly T[])[], all: readonly T[]): readonly T[] {
  const spacing = closestSpacing(all);
  const done: T[] = [];
  for (const ring of rings) {
    for (let left = ring; left.length > 0; ) {
      const next = nextAfter(done.at(-1), left, all, spacing);
      done.push(...next);
      left = left.filter((each) => !next.includes(each));
    }
  }
  return done;
}

/** The next one of a ring, in a list. */
function nextAfter<T extends PlanePoint>(
  last: T | undefined,
  ring: readonly T[],
  all: readonly T[],
  spacing: number,
): readonly T[] {
  if (last === undefined) return ring.slice(0, 1);
  const choice = preferring(ring, (each) => !areNeighboursOfOneSide(each, last, all, spacing));
  return greatestBy(choice, (each) => apart(each, last), spacing).slice(0, 1);
}

/** Groups of fasteners as far out as each other, from the centre outwards. */
function ringsAbout<T extends PlanePoint>(
  centre: PlanePoint,
  points: readonly T[],
): readonly (readonly T[])[] {
  const tolerance = EQUAL_SHARE * closestSpacing(points);
  const outwards = points
    .map((point, index) => ({ point, index, at: apart(point, centre) }))
    .sort((a, b) => a.at - b.at);
  return clusters(outwards, tolerance).map(({ members }) =>
    [...members].sort((a, b) => a.index - b.index).map(({ point }) => point),
  );
}

interface Cap<T> extends PlanePoint {
  readonly members: readonly T[];
}

/** Fasteners that stand at the same place along the row belong to one cap. */
function capsAlong<T extends PlanePoint>(points: readonly T[]): readonly Cap<T>[] {
  const along = points.map((point) => ({ point, at: point.x })).sort((a, b) => a.at - b.at);
  return clusters(along, IN_LINE_SHARE * closestSpacing(points)).map(({ at, members }) => ({
    x: at,
    y: 0,
    members: members.map(({ point }) => point),
  }));
}

interface Cluster<T> {
  /** Where its first stands. */
  readonly at: number;
  readonly members: T[];
}

/** Cuts a sorted list wherever the distance from the first of a group grows beyond the tolerance. */
function clusters<T extends { readonly at: number }>(
  sorted: readonly T[],
  tolerance: number,
): readonly Cluster<T>[] {
  const groups: Cluster<T>[] = [];
  for (const each of sorted) {
    const group = groups.at(-1);
    if (group !== undefined && each.at - group.at <= tolerance) group.members.push(each);
    else groups.push({ at: each.at, members: [each] });
  }
  return groups;
}

/** Those that satisfy a wish, or all where none does. */
function preferring<T>(choice: readonly T[], wish: (each: T) => boolean): readonly T[] {
  const wished = choice.filter(wish);
  return wished.length > 0 ? wished : choice;
}
