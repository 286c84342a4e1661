/** A way to serve one place: what it costs, and what it takes from stock, one entry a piece. */
export interface Way {
  readonly cost: number;
  readonly takes: readonly number[];
}

/**
 * The least that all places can cost together, found by trying every way of each with every way of the others, no piece
 * taken more often than there is of it; undefined where stock does not serve every place.
 */
export function leastCost(
  places: readonly (readonly Way[])[],
  counts: readonly number[],
  mayGoTogether: (taken: readonly number[]) => boolean = () => true,
  taken: readonly number[] = [],
): number | undefined {
  const [ways, ...rest] = places;
  if (ways === undefined) return mayGoTogether(taken) ? 0 : undefined;
  let best: number | undefined;
  for (const { cost, takes } of ways) {
    const after = [...taken, ...takes];
    if (counts.some((count, item) => after.filter((each) => each === item).length > count)) continue;
    const others = leastCost(rest, counts, mayGoTogether, after);
    if (others !== undefined && (best === undefined || cost + others < best)) best = cost + others;
  }
  return best;
}

/** What a place counts for that goes without: more than all others together. */
const WITHOUT = 1000;

/** Where stock does not serve every place together it serves as many as it can. */
export const orWithout = (places: readonly (readonly Way[])[]): readonly (readonly Way[])[] =>
  places.map((ways) => [...ways, { cost: WITHOUT, takes: [] }]);

/** Whether some place goes without. */
export const isShort = (cost: number | undefined): boolean => cost === undefined || cost >= WITHOUT;

/** What is wanted of a clearance, in whole thousandths; twice the middle, so that it is whole as well. */
export interface Aim {
  readonly min: number;
  readonly max: number;
  readonly twiceMiddle: number;
}

/** From least to greatest: the distance of the mean from the middle in half widths of the band, squared. */
export function costBetween(
  least: number,
  mean: number,
  greatest: number,
  { min, max, twiceMiddle }: Aim,
): number | undefined {
  if (least < min || greatest > max) return undefined;
  return max === min ? 0 : ((2 * mean - twiceMiddle) / (max - min)) ** 2;
}
