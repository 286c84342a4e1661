/** Numbers that look thrown and are the same in every run, so that two runs can be compared (mulberry32). */
export function chance(seed) {
  let state = seed;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t ^= t + Math.imul(t ^ (t >>> 7), 61 | t);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    /** A whole number from 0 to below `count`. */
    below: (count) => Math.floor(next() * count),
    /** About normal around 0: the sum of four throws, of standard deviation 1. */
    spread: () => (next() + next() + next() + next() - 2) * Math.sqrt(3),
  };
}
