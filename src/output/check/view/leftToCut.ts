import type { Printing } from '../../../checks/findings/readings.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { formatAmount } from '../../../quantity/format.ts';
import { compare, type Fraction, subtract, ZERO } from '../../../quantity/fraction.ts';

/** By the least place, down to the last size or the wear limit; undefined where no limit says it. */
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

/** `0.012 in may still be cut`; empty where no limit says it. */
export function leftToCutText(row: Row, { unit, decimals }: Pick<Printing, 'unit' | 'decimals'>): string {
  const left = leftToCut(row);
  if (left === undefined) return '';
  return left.n === 0n
    ? 'nothing may be cut any more'
    : `${formatAmount(left, unit, decimals)} may still be cut`;
}
