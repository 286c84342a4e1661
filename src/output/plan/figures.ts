import { unitOf } from '../../checks/judge/session.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Wanted } from '../../plan/fit/wanted.ts';
import { decimalsFor, formatDistance, formatNumber } from '../../quantity/format.ts';
import { type Fraction, parseDecimal } from '../../quantity/fraction.ts';
import { toBase, type Unit, unitNamed } from '../../quantity/units.ts';

/** How the sizes of parts that are chosen are printed. */
export interface Figures {
  readonly unit: Unit;
  readonly number: (amount: Fraction) => string;
  readonly range: (least: Fraction, greatest: Fraction) => string;
  readonly distance: (amount: Fraction) => string;
}

/** A tenth of a thou, or a micrometre: what such parts are measured to. */
export function figuresOf(engine: Engine): Figures {
  const unit = unitOf('length', engine);
  const step =
    unit.name === 'mm'
      ? toBase(parseDecimal('0.001'), unitNamed('mm'))
      : toBase(parseDecimal('0.0001'), unitNamed('in'));
  const decimals = decimalsFor(step, unit);
  const number = (amount: Fraction): string => formatNumber(amount, unit, decimals);
  return {
    unit,
    number,
    range: (least, greatest) =>
      number(least) === number(greatest) ? number(least) : `${number(least)} to ${number(greatest)}`,
    distance: (amount) => formatDistance(amount, unit, decimals),
  };
}

export const wantedText = ({ min, max, middle }: Wanted, { number, unit }: Figures): string =>
  `new ${number(min)} to ${number(max)} ${unit.name}, aim ${number(middle)}`;
