import type { ExampleReading } from '../../src/characteristics/characteristic.ts';
import type { Grid } from '../../src/characteristics/grid.ts';
import { exactly } from '../../src/measurement/value.ts';
import { parseDecimal, toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, toBase, type Unit, unitNamed, unitsOf } from '../../src/quantity/units.ts';

/** A figure as a worked example writes it: in the example's unit, or in its own. */
function gridOfText(text: string, unit: Unit): Grid {
  const [, digits = text, own] = /^(\S+) (\D.*)$/.exec(text) ?? [];
  return gridOfRows([[digits]], own === undefined ? unit : unitNamed(own));
}

/** A worked example's reading, exact, as a session would give it: one grid, or one for each position. */
export function gridsOfExample(reading: ExampleReading, unit: Unit): readonly Grid[] {
  if (typeof reading === 'string') return [gridOfText(reading, unit)];
  if (!('rows' in reading)) return reading.map((each) => gridOfText(each, unit));
  return [gridOfRows(reading.rows, unit, reading.stations, reading.directions)];
}

/** Rows of figures in a unit; `~` is a reading not taken. */
export const gridOfRows = (
  rows: readonly (readonly string[])[],
  unit: Unit,
  stations: readonly string[] = [],
  directions: readonly string[] = [],
): Grid => ({
  stations: rows.map((_, row) => (stations[row] === undefined ? {} : { name: stations[row] })),
  directions: (rows[0] ?? []).map((_, column) => directions[column]),
  rows: rows.map((row) =>
    row.map((text) => (text === '~' ? undefined : exactly(toBase(parseDecimal(text), unit)))),
  ),
});

export const INCH = unitNamed('in');
export const MILLIMETRE = unitNamed('mm');

/** An amount with as many decimals as the text it is compared with. */
export const asWritten = (
  amount: { readonly n: bigint; readonly d: bigint },
  unit: Unit,
  like: string,
): string => toDecimal(fromBase(amount, unit), like.includes('.') ? like.length - like.indexOf('.') - 1 : 0);

const [PLAIN_NUMBER] = unitsOf('number');

/** By its name; what has none is a plain number. */
export function unitOfExample(name: string): Unit {
  return name === '' && PLAIN_NUMBER !== undefined ? PLAIN_NUMBER : unitNamed(name);
}
