import type { Part, Parts } from '../../layout/part.ts';

/** The inside of a shell goes with its journal, its outside with its housing; of other parts there is one size. */
export type SurfaceSide = 'inside' | 'outside';

/** A part whose size says that of another: what it is bought for, or what was bought for it. */
export interface Mate {
  readonly part: Part;
  /** Which side of it, and of the part that is asked about. */
  readonly its: SurfaceSide;
  readonly side: SurfaceSide;
  /** It is machined, and the other is bought for it. */
  readonly leads: boolean;
}

/** The nearest first: what a part is made for, then what was bought for it, then what was bought for the same. */
export function matesOf(part: Part, parts: Parts): readonly Mate[] {
  const { fits, liesIn } = part.sized ?? {};
  const leader = (id: string | undefined, side: SurfaceSide): readonly Mate[] => {
    const found = id === undefined ? undefined : parts.find(id);
    return found === undefined ? [] : [{ part: found, its: 'inside', side, leads: true }];
  };
  const others = parts.all.filter((each) => each !== part && each.sized !== undefined);
  const bought = others.flatMap(({ sized }, index): readonly Mate[] => {
    const other = others[index];
    if (other === undefined) return [];
    const mate = (its: SurfaceSide): Mate => ({ part: other, its, side: 'inside', leads: false });
    if (sized?.fits === part.id) return [mate('inside')];
    if (sized?.liesIn === part.id) return [mate('outside')];
    return [];
  });
  const beside = others.flatMap((other): readonly Mate[] =>
    fits !== undefined && other.sized?.fits === fits
      ? [{ part: other, its: 'inside', side: 'inside', leads: false }]
      : [],
  );
  return [...leader(fits, 'inside'), ...leader(liesIn, 'outside'), ...bought, ...beside];
}
