import { type Range, statedRange } from './plausibleSizes.ts';
import type { DoubtedPoint, SlipContext } from './slipContext.ts';

/** From new to worn out; on a side without a limit what honest parts do. */
export function ownRange(
  { characteristic, reading }: DoubtedPoint,
  { expectations }: SlipContext,
): Range | undefined {
  const usual = expectations.fittedRange(characteristic, reading.position);
  const [row] = expectations.rows(characteristic, reading.position);
  if (usual === undefined || row === undefined) return undefined;
  const { bands } = row.limits;
  // Where no wear limit says how far parts wear, what honest parts do stands for it.
  if (bands.wear?.min === undefined && bands.wear?.max === undefined) return usual;
  const stated = statedRange(bands);
  return {
    from: Number.isFinite(stated.from) ? stated.from : usual.from,
    to: Number.isFinite(stated.to) ? stated.to : usual.to,
  };
}
