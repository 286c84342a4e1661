import { describe, expect, test } from 'vitest';
import { fastenerCount, type Layout, layOut, MOST_FASTENERS } from '../../../src/torque/order/layouts.ts';

const namesIn = (layout: Layout): string =>
  layOut(layout)
    .map(({ name }) => name)
    .join(' ');

describe('fasteners are named as the shop would', () => {
  test.each([
    [{ kind: 'row', count: 4 }, '1 2 3 4'],
    [{ kind: 'caps', caps: 3, eachCap: 2 }, '1L 1R 2L 2R 3L 3R'],
    [{ kind: 'caps', caps: 1, eachCap: 4 }, '1LO 1LI 1RI 1RO'],
    [{ kind: 'caps', caps: 1, eachCap: 6 }, '1LS 1LO 1LI 1RI 1RO 1RS'],
    [{ kind: 'head', rows: 2, columns: 3 }, 'A1 A2 A3 B1 B2 B3'],
    [{ kind: 'circle', count: 4 }, '1 2 3 4'],
  ] as const)('%j: %s', (layout, names) => {
    expect(namesIn(layout)).toBe(names);
    expect(fastenerCount(layout)).toBe(names.split(' ').length);
  });

  test('past the twenty-sixth row the letters are doubled', () => {
    expect(
      layOut({ kind: 'head', rows: 28, columns: 1 })
        .map(({ name }) => name)
        .slice(-3),
    ).toEqual(['Z1', 'AA1', 'AB1']);
  });

  test('names that are given take the places in turn', () => {
    const positions = layOut({ kind: 'caps', caps: 1, eachCap: 2 }, ['left', 'right']);
    expect(positions).toEqual([
      { name: 'left', x: 1, y: -1 },
      { name: 'right', x: 1, y: 1 },
    ]);
  });
});

test('a circle begins at the top and goes clockwise', () => {
  const [top, right, bottom, left] = layOut({ kind: 'circle', count: 4 });
  expect(top?.y).toBeCloseTo(-1, 12);
  expect(right?.x).toBeCloseTo(1, 12);
  expect(bottom?.y).toBeCloseTo(1, 12);
  expect(left?.x).toBeCloseTo(-1, 12);
});

test('a joint of no fasteners, of too many, of a half, or with the wrong number of names is refused', () => {
  for (const count of [0, -3, 2.5, Number.NaN, MOST_FASTENERS + 1, 1e9]) {
    expect(() => layOut({ kind: 'row', count })).toThrow(RangeError);
  }
  expect(() => layOut({ kind: 'row', count: 2 }, ['1'])).toThrow('1 names for 2 fasteners');
});
