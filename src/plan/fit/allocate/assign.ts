/** What a choice costs; undefined where it may not be made. */
export type Cost = number | undefined;

export interface Assignment {
  /** The column of each row. */
  readonly columns: readonly number[];
  readonly cost: number;
}

/**
 * One column for each row, no column twice, at the least sum of costs; undefined where the rows cannot all be served.
 * Shortest augmenting paths (Jonker and Volgenant 1987, from memory), n²m steps for n rows and m columns.
 */
export function assign(costs: readonly (readonly Cost[])[]): Assignment | undefined {
  const columnCount = costs[0]?.length ?? 0;
  const prices: Prices = { rows: costs.map(() => 0), columns: Array(columnCount).fill(0) };
  const rowOf: (number | undefined)[] = Array(columnCount).fill(undefined);
  for (const row of costs.keys()) {
    if (!augment(row, costs, prices, rowOf)) return undefined;
  }
  const columns = costs.map((_, row) => rowOf.indexOf(row));
  return { columns, cost: columns.reduce((total, column, row) => total + (costs[row]?.[column] ?? 0), 0) };
}

interface Prices {
  readonly rows: number[];
  readonly columns: number[];
}

/** Gives a row its column, moving rows that have one already along the cheapest path; false where there is none. */
function augment(
  start: number,
  costs: readonly (readonly Cost[])[],
  prices: Prices,
  rowOf: (number | undefined)[],
): boolean {
  const distance: number[] = prices.columns.map(() => Number.POSITIVE_INFINITY);
  const cameFrom: (number | undefined)[] = prices.columns.map(() => undefined);
  const settled = new Set<number>();
  let [row, reached] = [start, 0];
  let last: number | undefined;
  for (;;) {
    for (const [column, cost] of (costs[row] ?? []).entries()) {
      if (cost === undefined || settled.has(column)) continue;
      const through = reached + cost - at(prices.rows, row) - at(prices.columns, column);
      if (through < at(distance, column)) {
        distance[column] = through;
        cameFrom[column] = last;
      }
    }
    const nearest = nearestOf(distance, settled);
    if (nearest === undefined) return false;
    settled.add(nearest);
    reached = at(distance, nearest);
    last = nearest;
    const taken = rowOf[nearest];
    if (taken === undefined) break;
    row = taken;
  }
  reprice(start, reached, { distance, settled, rowOf }, prices);
  shiftRows(start, last, cameFrom, rowOf);
  return true;
}

function nearestOf(distance: readonly number[], settled: ReadonlySet<number>): number | undefined {
  let nearest: number | undefined;
  for (const [column, length] of distance.entries()) {
    if (settled.has(column) || length === Number.POSITIVE_INFINITY) continue;
    if (nearest === undefined || length < at(distance, nearest)) nearest = column;
  }
  return nearest;
}

/** Keeps every reduced cost at nought or above, and nought along the path. */
function reprice(
  start: number,
  reached: number,
  {
    distance,
    settled,
    rowOf,
  }: { distance: readonly number[]; settled: ReadonlySet<number>; rowOf: readonly (number | undefined)[] },
  prices: Prices,
): void {
  prices.rows[start] = at(prices.rows, start) + reached;
  for (const column of settled) {
    const gain = reached - at(distance, column);
    prices.columns[column] = at(prices.columns, column) - gain;
    const row = rowOf[column];
    if (row !== undefined) prices.rows[row] = at(prices.rows, row) + gain;
  }
}

function shiftRows(
  start: number,
  last: number,
  cameFrom: readonly (number | undefined)[],
  rowOf: (number | undefined)[],
): void {
  for (let column: number | undefined = last; column !== undefined; ) {
    const before: number | undefined = cameFrom[column];
    rowOf[column] = before === undefined ? start : rowOf[before];
    column = before;
  }
}

const at = (values: readonly number[], index: number): number => values[index] ?? Number.POSITIVE_INFINITY;
