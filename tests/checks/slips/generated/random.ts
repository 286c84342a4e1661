export type Random = () => number;

/** Numbers between 0 and 1 that are the same for the same seed. */
export function random(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export const between = (next: Random, low: number, high: number): number => low + (high - low) * next();

export const pick = <T>(next: Random, list: readonly T[]): T => {
  const found = list[Math.floor(next() * list.length)];
  if (found === undefined) throw new Error('nothing to pick from');
  return found;
};

/** Of a normal distribution, near enough. */
export const noise = (next: Random): number => next() + next() + next() + next() + next() + next() - 3;
