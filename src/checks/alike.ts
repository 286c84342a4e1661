import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Position } from '../layout/position.ts';

export type Some<T> = readonly [T, ...T[]];

/** Those of one key together, each group where its first stands. */
export function alike<T>(all: readonly T[], keyOf: (each: T) => string): readonly Some<T>[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const each of all) {
    const key = keyOf(each);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [each]);
    else group.push(each);
  }
  return [...groups.values()];
}

interface Figure {
  readonly characteristic: Characteristic;
  readonly position: Position;
}

/** What is said of figures at their first position, and at which others it is said of the same figures. */
export interface SaidOnce<T extends Figure> {
  readonly figures: Some<T>;
  readonly likewise: readonly Position[];
}

/** Figures of which one thing is said, so that it is said once. */
export function saidOnce<T extends Figure>(
  all: readonly T[],
  said: (each: T) => string,
): readonly SaidOnce<T>[] {
  const atOnePosition = alike(all, (each) => `${each.position.key} ${said(each)}`);
  const idsOf = (figures: Some<T>): string => figures.map(({ characteristic }) => characteristic.id).join();
  return alike(atOnePosition, (figures) => `${idsOf(figures)} ${said(figures[0])}`).map(
    ([figures, ...others]) => ({ figures, likewise: others.map(([{ position }]) => position) }),
  );
}

/** `; likewise at 2, 3`: what is said at the first of its positions holds at these as well. */
export const likewiseAt = (positions: readonly Position[]): string =>
  positions.length === 0 ? '' : `; likewise at ${positions.map(({ name }) => name).join(', ')}`;
