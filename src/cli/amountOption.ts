import { type Fraction, parseDecimal } from '../quantity/fraction.ts';
import { findUnit, type Quantity, toBase, type Unit, unitsOf } from '../quantity/units.ts';
import { withArticle } from '../quantity/words.ts';
import { UsageError } from './usage.ts';

const AMOUNT = /^(\d+(?:\.\d+)?|\.\d+) ?(\D.*)?$/;

/** An amount given as an option: `6`, `6in`, `"8.9 lbf in"`, in the base unit. A plain number is in `plain`. */
export function amountOption(
  option: string,
  text: string | undefined,
  quantity: Quantity,
  plain: Unit | undefined,
  example?: string,
): Fraction | undefined {
  if (text === undefined) return undefined;
  const [, digits, unitName] = AMOUNT.exec(text.trim()) ?? [];
  const all = unitsOf(quantity);
  const unit =
    unitName === undefined
      ? (plain ?? (all.length === 1 ? all[0] : undefined))
      : findUnit(unitName.trim(), quantity);
  if (digits !== undefined && unit?.quantity === quantity) return toBase(parseDecimal(digits), unit);
  const units = all.map(({ name }) => name);
  const help = `write a number with its unit, such as ${example ?? `6 ${units[0]}`}; units: ${units.join(', ')}`;
  throw new UsageError(`${option} ${text} is not ${withArticle(quantity)}`, help);
}
