import { readFileSync } from 'node:fs';

/** Rows of the reference table, worked with mpmath to 50 digits: the arguments, then the value. */
export interface ReferenceRow {
  readonly given: readonly number[];
  readonly value: number;
}

type Table = 'tq' | 'tcdf' | 'ncdf' | 'nq' | 'fcdf' | 'fq';

const FILE = new URL('../../data/dist-reference-mpmath50.json', import.meta.url);

export function referenceRows(table: Table): readonly ReferenceRow[] {
  const tables: Record<string, (number | string)[][]> = JSON.parse(readFileSync(FILE, 'utf8'));
  return (tables[table] ?? []).map((row) => ({
    given: row.slice(0, -1).map(Number),
    value: Number(row.at(-1)),
  }));
}

export const relativeError = (got: number, value: number): number =>
  Math.abs(got - value) / (value === 0 ? 1 : Math.abs(value));

/** The greatest of the errors, and how many rows it was taken over. */
export function worst(errors: readonly number[]): { readonly rows: number; readonly error: number } {
  return { rows: errors.length, error: Math.max(...errors) };
}
