import type { Evidence } from '../../compare/instruments/evidence.ts';
import type { Certificate } from '../../measurement/calibration/certificate.ts';
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
  return evidence.isGood ? `good: ${off}` : `${off}, more than its largest error`;
}

/** `C-2026-118 by a laboratory: as found off by 0.0003 in, more than its largest error; as left good: off by 0 in`. */
export function certificateText({ date, by, number }: Certificate, evidence: readonly Evidence[]): string {
  const named = ['certificate', number, by === undefined ? undefined : `by ${by}`].filter(Boolean).join(' ');
  const said = evidence.filter((each) => each.by === 'certificate' && each.day === date);
  const reported = said.map((each, index) =>
    each.off === undefined
      ? ''
      : `as ${said.length > 1 && index === 0 ? 'found' : 'left'} ${evidenceText(each)}`,
  );
  return [named, reported.filter(Boolean).join('; ')].filter(Boolean).join(': ');
}
