import { engineTitle } from '../shop/enginesNamed.ts';
import type { EngineFolder } from '../shop/resolveShop.ts';

/** One engine on both sides; a side on which it is not there is left open. */
export interface Pair {
  readonly a: Place | undefined;
  readonly b: Place | undefined;
}

export interface Place extends EngineFolder {
  /** The one session that is meant, as it is reported. */
  readonly session: string | undefined;
}

/** An engine whose folder is gone, and one of the same name in a folder that is new, are one that was moved. */
export function withMoved(pairs: readonly Pair[]): readonly Pair[] {
  const fresh = pairs.filter(({ a }) => a === undefined);
  const moved = new Map(
    pairs.flatMap((gone) => {
      if (gone.a === undefined || gone.b !== undefined) return [];
      const to = namedAlike(
        gone.a,
        fresh.flatMap(({ b }) => b ?? []),
      );
      return to === undefined ? [] : [[gone.a, to] as const];
    }),
  );
  const taken = new Set(moved.values());
  return pairs
    .filter(({ a, b }) => a !== undefined || b === undefined || !taken.has(b))
    .map((pair) => ({ ...pair, b: pair.b ?? (pair.a && moved.get(pair.a)) }));
}

/** The one of them that its document calls alike. */
export function namedAlike({ shop, folder }: Place, places: readonly Place[]): Place | undefined {
  const title = engineTitle(shop.store, folder);
  const [only, ...others] = places.filter(
    (each) => title !== '' && engineTitle(each.shop.store, each.folder) === title,
  );
  return others.length === 0 ? only : undefined;
}
