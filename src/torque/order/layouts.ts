/** Where a fastener sits, seen from above: x along the joint, y across it and growing towards the reader. */
export interface Position {
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

/** How the fasteners of a joint stand, in the trade's words. */
export type Layout =
  /** One straight row. */
  | { readonly kind: 'row'; readonly count: number }
  /** Bearing caps one behind the other, with two, four or six fasteners each. */
  | { readonly kind: 'caps'; readonly caps: number; readonly eachCap: 2 | 4 | 6 }
  /** A head or cover: rows along it, columns across it. */
  | { readonly kind: 'head'; readonly rows: number; readonly columns: number }
  /** Evenly round a bolt circle, from the top, clockwise. */
  | { readonly kind: 'circle'; readonly count: number };

/** Left to right across a cap: side (cross) bolts outermost, then outer, then inner. */
const ACROSS_A_CAP = {
  2: ['L', 'R'],
  4: ['LO', 'LI', 'RI', 'RO'],
  6: ['LS', 'LO', 'LI', 'RI', 'RO', 'RS'],
} as const;

/** More than any one joint has; the work of finding an order grows with the cube. */
export const MOST_FASTENERS = 200;

export function fastenerCount(layout: Layout): number {
  if (layout.kind === 'caps') return layout.caps * layout.eachCap;
  return layout.kind === 'head' ? layout.rows * layout.columns : layout.count;
}

/**
 * Positions for a layout, named as the shop would, or with the names given: cap by cap from left to right,
 * row by row, or round the circle. RangeError for other than 1 to 200 fasteners in whole numbers, or when
 * the names are not as many.
 */
export function layOut(layout: Layout, names?: readonly string[]): readonly Position[] {
  const count = fastenerCount(layout);
  if (!Number.isInteger(count) || count < 1 || count > MOST_FASTENERS) {
    throw new RangeError(`a joint has 1 to ${MOST_FASTENERS} fasteners, not ${count}`);
  }
  if (names !== undefined && names.length !== count) {
    throw new RangeError(`${names.length} names for ${count} fasteners`);
  }
  const places = unnamedPositions(layout);
  return places.map((place, index) => ({ ...place, name: names?.[index] ?? place.name }));
}

function unnamedPositions(layout: Layout): readonly Position[] {
  switch (layout.kind) {
    case 'row':
      return countTo(layout.count).map((n) => ({ name: `${n}`, x: n, y: 0 }));
    case 'caps':
      return countTo(layout.caps).flatMap((cap) => acrossCap(cap, ACROSS_A_CAP[layout.eachCap]));
    case 'head':
      return countTo(layout.rows).flatMap((row) =>
        countTo(layout.columns).map((column) => ({ name: `${rowLetter(row)}${column}`, x: column, y: row })),
      );
    case 'circle':
      return countTo(layout.count).map((n) => onCircle(n, layout.count));
  }
}

const countTo = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index + 1);

/** No cap bolt stands on the crankshaft's line: left is below nothing, right above. */
const acrossCap = (cap: number, sides: readonly string[]): readonly Position[] =>
  sides.map((side, index) => {
    const fromLeft = index - sides.length / 2;
    return { name: `${cap}${side}`, x: cap, y: fromLeft < 0 ? fromLeft : fromLeft + 1 };
  });

const onCircle = (n: number, count: number): Position => {
  const angle = (2 * Math.PI * (n - 1)) / count;
  return { name: `${n}`, x: Math.sin(angle), y: -Math.cos(angle) };
};

/** A, B, … Z, then AA: a joint has few rows, but a letter must never run out into signs. */
const rowLetter = (row: number): string =>
  row <= 26
    ? String.fromCharCode(64 + row)
    : rowLetter(Math.floor((row - 1) / 26)) + rowLetter(((row - 1) % 26) + 1);
