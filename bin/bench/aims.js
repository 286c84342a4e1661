/**
 * What the program is to come to at most, by the clock: `row` as often as what that row is held against. `floor` is the row
 * of what no program in node can do without for the same answer; memory has none.
 */
export const AIMS = [
  { row: 'version', what: '--version', most: 1.25, of: 'bare node', floor: 'node' },
  { row: 'check', what: 'check of one engine', most: 3, of: 'bare node', floor: 'checkFloor' },
  { row: 'since', what: 'check --since of 400 sessions', most: 4, of: 'bare node', floor: 'sinceFloor' },
  { row: 'diff', what: 'diff of 400 sessions', most: 4, of: 'bare node', floor: 'diffFloor' },
  { row: 'thousand', what: 'check of 1,000 engines', most: 2, of: 'parsing them', floor: 'thousandFloor' },
  {
    row: 'again',
    what: 'the same again, nothing changed, as text',
    most: 0.3,
    of: 'parsing them',
    floor: 'againFloor',
  },
  { row: 'thousandPeak', what: 'peak memory of 1,000 engines', most: 1.3, of: 'that of 100' },
];

/** How a row stands to the row that it is held against; undefined where it is held against none. */
export function ratio(rows, name, unit = 'wall') {
  const { against, ...row } = rows[name];
  const base = rows[against]?.[unit];
  return base === undefined ? undefined : row[unit] / base;
}

export const AIM_HEAD = ['', 'clock', 'processors', 'aim', 'floor', '', ''];

/** Each aim as a line of a table. */
export const aimRows = (rows) =>
  AIMS.filter(({ row }) => row in rows).map(({ row, what, most, of, floor }) => [
    what,
    times(ratio(rows, row)),
    times(ratio(rows, row, 'cpu')),
    String(most),
    floor === undefined ? '' : times(ratio(rows, floor)),
    `of ${of}`,
    ratio(rows, row) <= most ? 'met' : 'not met',
  ]);

/** What is not known, or not of that kind, is left empty. */
export const times = (value) => (Number.isFinite(value) ? value.toFixed(2) : '');
