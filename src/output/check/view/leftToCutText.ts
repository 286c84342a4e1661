import type { Printing } from '../../../checks/findings/readings.ts';
import { leftToCut } from '../../../checks/grades/cutDown.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { formatAmount } from '../../../quantity/format.ts';

/** `0.012 in may still be cut`: by the least place, down to the last size or the wear limit; empty where no limit says it. */
export function leftToCutText(
  { characteristic, limits, routes: [judged] }: Row,
  { unit, decimals }: Pick<Printing, 'unit' | 'decimals'>,
): string {
  const found = leftToCut(characteristic, limits.bands, judged?.least);
  if (found === undefined) return '';
  return found.left.n > 0n
    ? `${formatAmount(found.left, unit, decimals)} may still be cut`
    : 'nothing may be cut any more';
}
