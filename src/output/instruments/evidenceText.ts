import type { Evidence } from '../../compare/instruments/evidence.ts';
import { decimalsFor, formatAmount } from '../../quantity/format.ts';
import { absolute } from '../../quantity/fraction.ts';

/** `0.0003 in`; what a certificate says in words has no amount. */
export const offText = ({ off, unit, lastDigit }: Evidence): string =>
  off === undefined || unit === undefined || lastDigit === undefined
    ? 'more than it may be'
    : formatAmount(absolute(off), unit, decimalsFor(lastDigit, unit));

/** `good: off by 0.0001 in`, `off by 0.0003 in`. */
export function evidenceText(evidence: Evidence): string {
  const off = `off by ${offText(evidence)}`;
  if (evidence.isGood === undefined) return `${off}; its largest error is not stated`;
  return evidence.isGood ? `good: ${off}` : `${off}, more than its largest error: tenths recall`;
}
