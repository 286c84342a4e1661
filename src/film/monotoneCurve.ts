export type Point = readonly [x: number, y: number];

/**
 * A smooth curve through points, by growing x, that rises and falls only where they do: cubics whose slope at a point is
 * the weighted harmonic mean of those beside it (Fritsch and Butland 1984, from memory). Straight beyond its ends.
 */
export function monotoneCurve(points: readonly Point[]): (x: number) => number {
  const slopes = slopesAt(points);
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError('a curve through no points');
  return (x) => {
    if (x <= first[0]) return first[1] + (x - first[0]) * (slopes[0] ?? 0);
    if (x >= last[0]) return last[1] + (x - last[0]) * (slopes.at(-1) ?? 0);
    const next = points.findIndex((point) => point[0] > x);
    return between(points, slopes, next, x);
  };
}

function between(points: readonly Point[], slopes: readonly number[], next: number, x: number): number {
  const [[x0, y0], [x1, y1]] = [at(points, next - 1), at(points, next)];
  const [m0, m1] = [at(slopes, next - 1), at(slopes, next)];
  const width = x1 - x0;
  const t = (x - x0) / width;
  return (
    y0 * (1 + 2 * t) * (1 - t) ** 2 +
    width * m0 * t * (1 - t) ** 2 +
    y1 * t * t * (3 - 2 * t) +
    width * m1 * t * t * (t - 1)
  );
}

function slopesAt(points: readonly Point[]): readonly number[] {
  const widths = points.slice(1).map(([x], index) => x - at(points, index)[0]);
  const chords = points.slice(1).map(([, y], index) => (y - at(points, index)[1]) / at(widths, index));
  return points.map((_, index) => {
    const [before, after] = [chords[index - 1], chords[index]];
    if (before === undefined || after === undefined) return before ?? after ?? 0;
    if (before * after <= 0) return 0;
    const [h0, h1] = [at(widths, index - 1), at(widths, index)];
    return (3 * (h0 + h1)) / ((2 * h1 + h0) / before + (h1 + 2 * h0) / after);
  });
}

function at<Item>(items: readonly Item[], index: number): Item {
  const item = items[index];
  if (item === undefined) throw new RangeError(`nothing at ${index}`);
  return item;
}
