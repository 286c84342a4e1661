import type { Position } from '../layout/position.ts';

/** Those of one key together, each group where its first stands. */
export function alike<T>(all: readonly T[], keyOf: (each: T) => string): readonly (readonly [T, ...T[]])[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const each of all) {
    const key = keyOf(each);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [each]);
    else group.push(each);
  }
  return [...groups.values()];
}

/** `; likewise at 2, 3`: what is said at the first of its positions holds at these as well. */
export const likewiseAt = (positions: readonly Position[]): string =>
  positions.length === 0 ? '' : `; likewise at ${positions.map(({ name }) => name).join(', ')}`;
