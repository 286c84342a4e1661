import { unitOf } from '../../checks/judge/session.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Wanted } from '../../plan/fit/wanted.ts';
import { fineDecimals, formatDistance, formatNumber } from '../../quantity/format.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { numberIn } from '../check/rowJson.ts';
import type { Ends, PageCell } from './page.ts';

/** How the sizes of parts that are chosen are printed. */
export interface Figures {
  readonly unit: Unit;
  readonly number: (amount: Fraction) => string;
  readonly range: (least: Fraction, greatest: Fraction) => string;
  readonly distance: (amount: Fraction) => string;
  /** The same for scripts, all digits of it. */
  readonly value: (amount: Fraction) => number;
  /** Both, for a table. */
  readonly cell: (amount: Fraction | undefined) => PageCell;
  readonly rangeCell: (
    ends: { readonly least: Fraction; readonly greatest: Fraction } | undefined,
  ) => PageCell;
}

export function figuresOf(engine: Engine): Figures {
  const unit = unitOf('length', engine);
  const decimals = fineDecimals(unit);
  const number = (amount: Fraction): string => formatNumber(amount, unit, decimals);
  const range = (least: Fraction, greatest: Fraction): string =>
    number(least) === number(greatest) ? number(least) : `${number(least)} to ${number(greatest)}`;
  const value = (amount: Fraction): number => numberIn(amount, unit);
  return {
    unit,
    number,
    range,
    value,
    distance: (amount) => formatDistance(amount, unit, decimals),
    cell: (amount) => (amount === undefined ? '' : { text: number(amount), value: value(amount) }),
    rangeCell: (ends) =>
      ends === undefined ? '' : { text: range(ends.least, ends.greatest), value: endsOf(ends, unit) },
  };
}

export const endsOf = (
  { least, greatest }: { readonly least: Fraction; readonly greatest: Fraction },
  unit: Unit,
): Ends => ({ least: numberIn(least, unit), greatest: numberIn(greatest, unit) });

export const wantedText = ({ min, max, middle }: Wanted, { number, unit }: Figures): string =>
  `new ${number(min)} to ${number(max)} ${unit.name}, aim ${number(middle)}`;
