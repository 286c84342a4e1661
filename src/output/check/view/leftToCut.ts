import type { Printing } from '../../../checks/findings/readings.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { formatAmount } from '../../../quantity/format.ts';
import { compare, subtract } from '../../../quantity/fraction.ts';

/** `0.012 in may still be cut`: by the least place, down to the last size or the wear limit; empty where no limit says it. */
export function leftToCut(
  { characteristic, limits: { bands }, routes: [judged] }: Row,
  { unit, decimals }: Pick<Printing, 'unit' | 'decimals'>,
): string {
  const sides = [bands.last?.min, bands.wear?.min].flatMap((side) => side ?? []);
  const [least] = sides.toSorted((a, b) => compare(b.amount, a.amount));
  if (characteristic.isCutDown !== true || judged === undefined || least === undefined) return '';
  const left = subtract(judged.least, least.amount);
  return left.n > 0n
    ? `${formatAmount(left, unit, decimals)} may still be cut`
    : 'nothing may be cut any more';
}
