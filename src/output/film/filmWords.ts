import type { Spread } from '../../film/spread.ts';
import type { BearingLoad } from '../../oiling/bearingLoad.ts';
import { inLitresAMinute, lengthFrom } from '../../oiling/inSi.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { type Unit, unitNamed } from '../../quantity/units.ts';

/** Films are thin: thousandths where clearances are in inches, else micrometres. */
export const filmUnit = (clearance: Unit): Unit => unitNamed(clearance.name === 'in' ? 'thou' : 'um');

/** A length in metres with so many decimals. */
export const lengthText = (metres: number, unit: Unit, decimals: number): string =>
  (lengthFrom(metres) / toNumber(unit.factor)).toFixed(decimals);

export const filmText = (metres: number, unit: Unit): string =>
  lengthText(metres, unit, unit.name === 'thou' ? 3 : 1);

export const spreadText = ({ least, greatest }: Spread, text: (value: number) => string): string =>
  `${text(least)} to ${text(greatest)}`;

/** With two figures, and none after the point from ten on. */
export function flowText(cubicMetresASecond: number): string {
  const flow = inLitresAMinute(cubicMetresASecond);
  return flow.toFixed(flow < 10 ? 2 : 1);
}

export const powerText = (watts: number): string => watts.toFixed(watts < 10 ? 1 : 0);

/** A difference of temperatures. */
export const riseText = (degrees: number, unit: Unit): string => (degrees / toNumber(unit.factor)).toFixed(0);

export const loadText = ({ newtons, why }: BearingLoad, unit: Unit): string =>
  `${Math.round(newtons / toNumber(unit.factor))} ${unit.name} (${why})`;

export const CAUTION =
  "An estimate for a steady load on a round bearing: in an engine the load changes all the time, and no bearing is quite round. It decides no verdict; the maker's limits come first.";
