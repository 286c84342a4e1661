import { ratio, times } from './aims.js';

const ms = (value) => `${value.toFixed(0)} ms`;
const mib = (kib) => `${(kib / 1024).toFixed(0)} MiB`;

export const MEASURED_HEAD = ['', 'clock', 'ratio', 'processors', 'ratio'];

/** A row of times has both clocks, a row of memory has `wall` in KiB alone. */
export const measuredRows = (rows) =>
  Object.entries(rows).map(([name, { what, wall, cpu }]) => [
    what,
    cpu === undefined ? mib(wall) : ms(wall),
    times(ratio(rows, name)),
    cpu === undefined ? '' : ms(cpu),
    times(ratio(rows, name, 'cpu')),
  ]);

export const markdownTable = (head, rows) =>
  [head, head.map((_, column) => (column === 0 ? '---' : '--:')), ...rows]
    .map((cells) => `| ${cells.map(indented).join(' | ')} |\n`)
    .join('');

/** Markdown drops the spaces that set a row below the one before. */
const indented = (cell) => cell.replace(/^ +/, '&emsp;');

export function textTable(head, rows) {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((cells) => cells[column].length)));
  const padded = (cell, column) => (column === 0 ? cell.padEnd(widths[0]) : cell.padStart(widths[column]));
  return all.map((cells) => `${cells.map(padded).join('  ').trimEnd()}\n`).join('');
}
