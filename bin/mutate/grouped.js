/** By key, in the order in which keys and members come first. */
export const grouped = (all, keyOf) =>
  all.reduce(
    (groups, each) => groups.set(keyOf(each), [...(groups.get(keyOf(each)) ?? []), each]),
    new Map(),
  );
