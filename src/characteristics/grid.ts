import type { Station } from '../documents/session/reading.ts';
import { meanValue, type Value } from '../measurement/value.ts';
import { compare, type Fraction } from '../quantity/fraction.ts';

/** Values read at one position: rows are stations along the part, columns directions round it. */
export interface Grid {
  readonly stations: readonly Station[];
  readonly directions: readonly (string | undefined)[];
  readonly rows: readonly (readonly (Value | undefined)[])[];
}

/** What a position measures, by one route. */
export interface Measured {
  readonly least: Value;
  readonly mean: Value;
  readonly greatest: Value;
  /** What else the readings show, such as which end is the larger. */
  readonly remark?: string;
  /** One step of the last digit that is worth printing, where it does not follow from those of the readings. */
  readonly lastDigit?: Fraction;
}

export const gridOfOne = (value: Value): Grid => ({
  stations: [{}],
  directions: [undefined],
  rows: [[value]],
});

export function valuesOf({ rows }: Grid): readonly Value[] {
  const values: Value[] = [];
  for (const row of rows) {
    for (const value of row) if (value !== undefined) values.push(value);
  }
  return values;
}

export const leastOf = (values: readonly Value[]): Value | undefined =>
  pick(values, (a, b) => compare(a.amount, b.amount) < 0);

export const greatestOf = (values: readonly Value[]): Value | undefined =>
  pick(values, (a, b) => compare(a.amount, b.amount) > 0);

/** The smallest, the mean and the greatest of what was read. */
export function summary(values: readonly Value[]): Measured | undefined {
  const [least, greatest] = [leastOf(values), greatestOf(values)];
  if (least === undefined || greatest === undefined) return undefined;
  return { least, mean: meanValue(values), greatest };
}

/** The columns of these names; all of them where none is named so. */
export function columnsNamed(grid: Grid, names: readonly string[]): Grid {
  const kept = grid.directions.flatMap((direction, index) =>
    direction !== undefined && names.includes(direction) ? [index] : [],
  );
  if (kept.length === 0) return grid;
  return {
    stations: grid.stations,
    directions: kept.map((index) => grid.directions[index]),
    rows: grid.rows.map((row) => kept.map((index) => row[index])),
  };
}

function pick(values: readonly Value[], better: (a: Value, b: Value) => boolean): Value | undefined {
  return values.reduce<Value | undefined>(
    (best, value) => (best === undefined || better(value, best) ? value : best),
    undefined,
  );
}
