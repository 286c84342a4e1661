import { readFileSync } from 'node:fs';

/** The rows of a data file in tests/data by column name, as text. */
export function readRows(name: string): readonly Readonly<Record<string, string>>[] {
  const text = readFileSync(new URL(`../data/${name}.csv`, import.meta.url), 'utf8');
  const [header = '', ...lines] = text.trim().split(/\r?\n/);
  const names = header.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(names.map((column, index) => [column, cells[index] ?? '']));
  });
}

/** One column as numbers. */
export const readColumn = (name: string, column: string): readonly number[] =>
  readRows(name).map((row) => Number(row[column]));

/** Two columns as the points of a line. */
export function readPoints(name: string, x: string, y: string): readonly { x: number; y: number }[] {
  return readRows(name).map((row) => ({ x: Number(row[x]), y: Number(row[y]) }));
}
