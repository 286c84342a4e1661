import type { ExampleReading } from '../../src/characteristics/characteristic.ts';
import type { Grid } from '../../src/characteristics/grid.ts';
import { exactly } from '../../src/measurement/value.ts';
import { parseDecimal, toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, toBase, type Unit, unitNamed } from '../../src/quantity/units.ts';

/** A worked example's reading, exact, as a session would give it. */
export function gridOfExample(reading: ExampleReading, unit: Unit): Grid {
  if (typeof reading === 'string') return gridOfRows([[reading]], unit);
  return gridOfRows(reading.rows, unit, reading.stations, reading.directions);
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
