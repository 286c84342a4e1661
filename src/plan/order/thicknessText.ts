import { unitOf } from '../../checks/judge/session.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { ThicknessList } from '../../documents/stock/stock.ts';
import { fineDecimals, formatAmount } from '../../quantity/format.ts';
import type { Fraction } from '../../quantity/fraction.ts';

export function thicknessText(thickness: Fraction, engine: Engine): string {
  const unit = unitOf('length', engine);
  return formatAmount(thickness, unit, fineDecimals(unit));
}

export const thicknessCalled = (list: ThicknessList, count: number): string =>
  count === 1 ? NAMES[list] : `${NAMES[list]}s`;

const NAMES: Readonly<Record<ThicknessList, string>> = {
  gaskets: 'head gasket',
  liner_shims: 'liner shim',
  lash_buckets: 'lash bucket',
};
