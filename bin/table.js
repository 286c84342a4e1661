/** Lines of a table: words to the left, numbers to the right, and a row of the sums. */
export function table(head, rows) {
  const sums = head.slice(1).map((_, at) => rows.reduce((sum, row) => sum + row[at + 1], 0));
  const all = [head, ...rows, ['in all', ...sums]].map((row) => row.map(shown));
  const widths = head.map((_, at) => Math.max(...all.map((row) => row[at].length)));
  return all.map((row) =>
    row.map((text, at) => (at === 0 ? text.padEnd(widths[at]) : text.padStart(widths[at]))).join('  '),
  );
}

const shown = (value) => (typeof value === 'number' ? value.toLocaleString('en-US') : value);
