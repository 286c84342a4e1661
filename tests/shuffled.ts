/** The same things in an order that the seed gives. */
export function shuffled<T>(things: readonly T[], seed: number): T[] {
  let state = seed;
  const next = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  return things
    .map((thing) => ({ thing, at: next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ thing }) => thing);
}
