import type { Route } from '../../checks/value/route.ts';
import { formatUncertainty, withUnitName } from '../../quantity/format.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';

/** Beside a reading that was put right by a certificate: it is not the number that stands in the file. */
export function putRightNote({ putRightBy }: Route, unit: Unit): readonly string[] {
  if (putRightBy === undefined || putRightBy.n === 0n) return [];
  const size = withUnitName(formatUncertainty(Math.abs(toNumber(putRightBy)), unit), unit);
  return [`put right by ${putRightBy.n < 0n ? '−' : '+'}${size}, by certificate`];
}
