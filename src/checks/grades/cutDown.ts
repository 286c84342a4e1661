import type { Characteristic } from '../../characteristics/characteristic.ts';
import { compare, type Fraction, subtract } from '../../quantity/fraction.ts';
import type { Bands, SideLimit } from '../judge/sideLimit.ts';

/** The least that a head or block may be cut to: its last size or its wear limit, whichever comes first; none of other figures. */
export function leastOf({ isCutDown }: Characteristic, { last, wear }: Bands): SideLimit | undefined {
  if (isCutDown !== true) return undefined;
  const [least] = [last?.min, wear?.min]
    .flatMap((limit) => limit ?? [])
    .toSorted((a, b) => compare(b.amount, a.amount));
  return least;
}

/** The least of a new head is that of one that was never cut: any other is judged by the least that it may be cut to. */
export const bandsOfCut = (
  characteristic: Characteristic,
  bands: Bands,
  condition: 'new' | 'wear' | undefined,
): Bands =>
  condition === 'new' || leastOf(characteristic, bands) === undefined
    ? bands
    : { ...bands, new: { min: undefined, max: bands.new?.max } };

/** How much of a head or block may still be cut where it is thinnest; undefined where no limit says it. */
export function leftToCut(
  characteristic: Characteristic,
  bands: Bands,
  thinnest: Fraction | undefined,
): LeftToCut | undefined {
  const least = leastOf(characteristic, bands);
  return least === undefined || thinnest === undefined
    ? undefined
    : { least, left: subtract(thinnest, least.amount) };
}

export interface LeftToCut {
  readonly least: SideLimit;
  /** Below nought where it is cut too far. */
  readonly left: Fraction;
}
