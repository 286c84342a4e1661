import { compare, type Fraction, subtract, ZERO } from '../../quantity/fraction.ts';
import type { Row } from './row.ts';

/** How much may still be cut from a head or a block, by its least place, down to the last size or the wear limit; undefined where no limit says it. */
export function leftToCut({
  characteristic,
  limits: { bands },
  routes: [judged],
}: Row): Fraction | undefined {
  const sides = [bands.last?.min, bands.wear?.min].flatMap((side) => side ?? []);
  const [least] = sides.toSorted((a, b) => compare(b.amount, a.amount));
  if (characteristic.isCutDown !== true || judged === undefined || least === undefined) return undefined;
  const left = subtract(judged.least, least.amount);
  return left.n > 0n ? left : ZERO;
}
