import { addValues, meanValue, scaleValue, subtractValues, type Value } from '../measurement/value.ts';
import { fraction, ZERO } from '../quantity/fraction.ts';
import { columnsNamed, type Grid, greatestOf, leastOf, type Measured, summary, valuesOf } from './grid.ts';

/** Directions of a bore square to its split line, where a bearing carries; a cylinder's is its thrust side. */
const SQUARE_TO_SPLIT = ['square', 'vertical'];
const THRUST = ['thrust'];

/**
 * Diametral clearance of a shaft in a bore. The shaft turns, so all its directions count; of the bore
 * only the carrying direction where it is named. Stations pair by name, else by order where there are
 * as many, else each with each. Least = smallest (bore − greatest shaft), greatest = largest
 * (bore − least shaft), mean = mean − mean of what was paired, so that it lies between the two.
 */
export function clearance(
  bore: Grid,
  shaft: Grid,
  carrying: readonly string[] = SQUARE_TO_SPLIT,
): Measured | undefined {
  const carried = columnsNamed(bore, carrying);
  const leasts: Value[] = [];
  const means: Value[] = [];
  const greatests: Value[] = [];
  for (const [outer, inner] of pairedRows(carried, shaft)) {
    const [small, large] = [leastOf(outer), greatestOf(outer)];
    const [thin, thick] = [leastOf(inner), greatestOf(inner)];
    if (small === undefined || large === undefined || thin === undefined || thick === undefined) continue;
    leasts.push(subtractValues(small, thick));
    means.push(subtractValues(meanValue(outer), meanValue(inner)));
    greatests.push(subtractValues(large, thin));
  }
  const [least, greatest] = [leastOf(leasts), greatestOf(greatests)];
  if (least === undefined || greatest === undefined) return undefined;
  return { least, mean: meanValue(means), greatest };
}

export const pistonClearance = (cylinder: Grid, piston: Grid): Measured | undefined =>
  clearance(cylinder, piston, THRUST);

/** What is left of a width beside several others: least with the greatest of each, greatest with the least. */
export function lessAll(width: Grid, others: readonly Grid[]): Measured | undefined {
  const all = [width, ...others].map((each) => summary(valuesOf(each)));
  const [own, ...taken] = all.flatMap((each) => each ?? []);
  if (own === undefined || taken.length < others.length) return undefined;
  const less = (from: Value, side: 'least' | 'mean' | 'greatest') =>
    taken.reduce((left, each) => subtractValues(left, each[side]), from);
  return {
    least: less(own.least, 'greatest'),
    mean: less(own.mean, 'mean'),
    greatest: less(own.greatest, 'least'),
  };
}

/** Clearance before assembly: what the shells take away from the housing, and then the journal. */
export function clearanceThroughShells(housing: Grid, shells: Grid, journal: Grid): Measured | undefined {
  const both = bothHalves(shells);
  if (both === undefined) return undefined;
  const inside = columnsNamed(housing, SQUARE_TO_SPLIT);
  const lined: Grid = {
    ...inside,
    rows: inside.rows.map((row) =>
      row.map((value) => value && subtractValues(addValues(value, CRUSH), both)),
    ),
  };
  return clearance(lined, journal);
}

/**
 * Shells are pressed into their housing and widen it, by more or less with their crush: a term of the
 * model, not of any instrument. Half its width is a judgement of ours, no source.
 */
const CRUSH: Value = {
  amount: ZERO,
  terms: new Map([
    ['crush of the shells (model)', { u: (3 * 25_400) / Math.sqrt(3), dof: Number.POSITIVE_INFINITY }],
  ]),
};

/** Two thicknesses at a position are the two halves and are summed; one stands for both. */
export function bothHalves(shells: Grid): Value | undefined {
  const [first, second, ...more] = valuesOf(shells);
  if (first === undefined) return undefined;
  if (second === undefined) return scaleValue(first, fraction(2));
  return more.length === 0 ? addValues(first, second) : scaleValue(meanValue(valuesOf(shells)), fraction(2));
}

/** Rows that belong together, with what was not taken left out. */
function pairedRows(outer: Grid, inner: Grid): readonly (readonly [readonly Value[], readonly Value[]])[] {
  const names = inner.stations.map((station) => station.name);
  const byName = outer.stations.flatMap(({ name }, row) => {
    const other = name === undefined ? -1 : names.indexOf(name);
    return other < 0 ? [] : [[taken(outer, row), taken(inner, other)] as const];
  });
  if (byName.length > 0) return byName;
  if (outer.rows.length === inner.rows.length) {
    return outer.rows.map((_, row) => [taken(outer, row), taken(inner, row)] as const);
  }
  return outer.rows.flatMap((_, row) =>
    inner.rows.map((_row, other) => [taken(outer, row), taken(inner, other)] as const),
  );
}

const taken = (grid: Grid, row: number): readonly Value[] =>
  (grid.rows[row] ?? []).flatMap((value) => value ?? []);
