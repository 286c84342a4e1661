import { scaleValue, subtractValues, type Value } from '../measurement/value.ts';
import { absolute, compare, divide, type Fraction, subtract, toNumber } from '../quantity/fraction.ts';
import type { DerivationChoice } from './characteristic.ts';
import { type Grid, greatestOf, leastOf, type Measured, valuesOf } from './grid.ts';

/**
 * Out of round: at each station the greatest diameter less the least, and of these the worst
 * (workshop convention: the full difference of diameters, not of radii).
 */
export function outOfRound(grid: Grid): Measured | undefined {
  const spreads = grid.rows.flatMap((row) => spread(row.flatMap((value) => value ?? [])) ?? []);
  return alone(greatestOf(spreads));
}

/** Greatest less least; it needs two readings. */
function spread(values: readonly Value[]): Value | undefined {
  const [least, greatest] = apart(values);
  if (values.length < 2 || least === undefined || greatest === undefined) return undefined;
  return subtractValues(greatest, least);
}

/** The least and the greatest, two readings also where all are alike: of one less itself nothing would be uncertain. */
function apart(values: readonly Value[]): readonly [Value | undefined, Value | undefined] {
  const [least, greatest] = [leastOf(values), greatestOf(values)];
  return [least, least === greatest ? values.at(-1) : greatest];
}

const alone = (value: Value | undefined): Measured | undefined =>
  value === undefined ? undefined : { least: value, mean: value, greatest: value };

/** From one end of a journal to the other, unless the limit asks for the whole range. */
export const journalTaper = (grid: Grid, choice: DerivationChoice): Measured | undefined =>
  taper(grid, { by: 'ends', ...choice });

/** Greatest less least down the bore, unless the limit asks for the ends. */
export const boreTaper = (grid: Grid, choice: DerivationChoice): Measured | undefined =>
  taper(grid, { by: 'range', ...choice });

/** Full difference of diameters along the part, in each direction; the worst direction counts. */
function taper(grid: Grid, choice: DerivationChoice): Measured | undefined {
  const tapers = grid.directions.flatMap((_, column) => taperOfColumn(columnOf(grid, column), choice) ?? []);
  const worst = greatestOf(tapers.map((each) => each.value));
  const chosen = tapers.find((each) => each.value === worst);
  if (worst === undefined || chosen === undefined) return undefined;
  return {
    least: worst,
    mean: worst,
    greatest: worst,
    ...(chosen.remark === '' ? {} : { remark: chosen.remark }),
  };
}

interface Reading {
  readonly name: string | undefined;
  readonly distance: Fraction | undefined;
  readonly value: Value;
}

const columnOf = (grid: Grid, column: number): readonly Reading[] =>
  grid.stations.flatMap(({ name, distance }, row) => {
    const value = grid.rows[row]?.[column];
    return value === undefined ? [] : [{ name, distance, value }];
  });

function taperOfColumn(
  column: readonly Reading[],
  choice: DerivationChoice,
): { readonly value: Value; readonly remark: string } | undefined {
  const pair = choice.by === 'ends' ? ends(column) : extremes(column);
  if (pair === undefined) return undefined;
  const [small, large] = pair;
  const difference = subtractValues(large.value, small.value);
  const value = choice.per === undefined ? difference : perLength(difference, small, large, choice.per);
  return value === undefined
    ? undefined
    : { value, remark: [larger(large, difference), shape(column)].filter(Boolean).join(', ') };
}

function ends(column: readonly Reading[]): readonly [Reading, Reading] | undefined {
  const [first, last] = [column[0], column.at(-1)];
  if (first === undefined || last === undefined || column.length < 2) return undefined;
  return compare(first.value.amount, last.value.amount) <= 0 ? [first, last] : [last, first];
}

function extremes(column: readonly Reading[]): readonly [Reading, Reading] | undefined {
  const values = column.map((each) => each.value);
  const [least, greatest] = apart(values);
  const small = column.find((each) => each.value === least);
  const large = column.find((each) => each.value === greatest);
  return column.length < 2 || small === undefined || large === undefined ? undefined : [small, large];
}

/** Taken for the length that the limit names; undefined where the stations carry no distances. */
function perLength(difference: Value, a: Reading, b: Reading, per: Fraction): Value | undefined {
  if (a.distance === undefined || b.distance === undefined) return undefined;
  const apart = absolute(subtract(a.distance, b.distance));
  if (apart.n === 0n) return difference;
  return scaleValue(difference, divide(per, apart));
}

const larger = (large: Reading, difference: Value): string =>
  large.name === undefined || toNumber(difference.amount) === 0 ? '' : `${large.name} larger`;

/** With a station between the ends: larger there than at both is a barrel, smaller is hollow. */
function shape(column: readonly Reading[]): string {
  const [first, last] = [column[0], column.at(-1)];
  if (column.length < 3 || first === undefined || last === undefined) return '';
  const between = column.slice(1, -1).map((each) => each.value);
  const [least, greatest] = [leastOf(between), greatestOf(between)];
  const isAbove =
    greatest !== undefined && [first, last].every((end) => compare(greatest.amount, end.value.amount) > 0);
  const isBelow =
    least !== undefined && [first, last].every((end) => compare(least.amount, end.value.amount) < 0);
  return isAbove ? 'barrel' : isBelow ? 'hollow' : '';
}

/** Whether a taper for a length can be worked out: stations carry distances. */
export const hasDistances = (grid: Grid): boolean =>
  valuesOf(grid).length > 0 &&
  grid.stations.length > 1 &&
  grid.stations.every((station) => station.distance !== undefined);
