import type { Printing } from '../../../checks/findings/readings.ts';
import { leftToCut } from '../../../checks/judge/leftToCut.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { formatAmount } from '../../../quantity/format.ts';

/** `0.012 in may still be cut`; empty where no limit says it. */
export function leftToCutText(row: Row, { unit, decimals }: Pick<Printing, 'unit' | 'decimals'>): string {
  const left = leftToCut(row);
  if (left === undefined) return '';
  return left.n === 0n
    ? 'nothing may be cut any more'
    : `${formatAmount(left, unit, decimals)} may still be cut`;
}
