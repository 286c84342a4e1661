import { add, type Fraction, toDecimal } from '../../quantity/fraction.ts';
import { fromBase } from '../../quantity/units.ts';
import type { Amount } from '../amount.ts';

/** An amount as a person would have written it had it been that much more. */
export function movedAmount<T extends Pick<Amount, 'amount' | 'unit' | 'written'>>(
  standard: T,
  by: Fraction,
): T {
  if (by.n === 0n) return standard;
  const [digits = '', ...unitName] = standard.written.split(' ');
  const amount = add(standard.amount, by);
  const inUnit = fromBase(amount, standard.unit);
  const decimals = Math.max(
    decimalsOf(digits),
    decimalsOf(toDecimal(inUnit, MOST_DECIMALS).replace(/0+$/, '')),
  );
  return { ...standard, amount, written: [toDecimal(inUnit, decimals), ...unitName].join(' ') };
}

/** A size in the other unit goes on without end. */
const MOST_DECIMALS = 6;

const decimalsOf = (digits: string): number => digits.split('.')[1]?.length ?? 0;
