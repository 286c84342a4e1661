import { sum } from './sample.ts';

/** A figure for each of several readings, in their order. */
export type Column = readonly number[];

export interface Whitening {
  /** Turns a column into one whose errors are independent and of size one. */
  readonly whiten: (column: Column) => Column;
  /** V⁻¹ of a column, for the covariance V of its errors. */
  readonly weigh: (column: Column) => Column;
}

/** Readings that count alike. */
export const ALIKE: Whitening = { whiten: (column) => column, weigh: (column) => column };

/**
 * By Cholesky's factor L of V = D + S: `own` holds the variances on the diagonal D, each above zero, and each of `shared`
 * is an error that adds its products to S.
 */
export function whiteningOf(own: Column, shared: readonly Column[]): Whitening {
  const rows: number[][] = [];
  for (const [i, least] of own.entries()) {
    const row: number[] = [];
    for (let j = 0; j < i; j++) {
      const below = rows[j] ?? [];
      row.push((covariance(shared, i, j) - product(row, below, j)) / (below[j] ?? Number.NaN));
    }
    // S takes nothing off what a reading has of its own, however it is rounded.
    row.push(Math.sqrt(Math.max(least, least + covariance(shared, i, i) - product(row, row, i))));
    rows.push(row);
  }
  const whiten = (column: Column): Column => solveDown(rows, column);
  return { whiten, weigh: (column) => solveUp(rows, whiten(column)) };
}

export const dot = (a: Column, b: Column): number => product(a, b, a.length);

function product(a: Column, b: Column, count: number): number {
  let total = 0;
  for (let k = 0; k < count; k++) total += (a[k] ?? Number.NaN) * (b[k] ?? Number.NaN);
  return total;
}

const covariance = (shared: readonly Column[], i: number, j: number): number =>
  sum(shared.map((column) => (column[i] ?? Number.NaN) * (column[j] ?? Number.NaN)));

function solveDown(rows: readonly Column[], column: Column): Column {
  const solved: number[] = [];
  for (const [i, row] of rows.entries())
    solved.push(((column[i] ?? Number.NaN) - product(row, solved, i)) / (row[i] ?? Number.NaN));
  return solved;
}

function solveUp(rows: readonly Column[], column: Column): Column {
  const left = [...column];
  for (const [i, row] of [...rows.entries()].reverse()) {
    const solved = (left[i] ?? Number.NaN) / (row[i] ?? Number.NaN);
    left[i] = solved;
    for (let j = 0; j < i; j++) left[j] = (left[j] ?? Number.NaN) - (row[j] ?? Number.NaN) * solved;
  }
  return left;
}
