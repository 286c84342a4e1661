import { describe, expect, test } from 'vitest';
import { areNeighboursOfOneSide } from '../../../src/torque/order/centreOut.ts';
import { layOut, MOST_FASTENERS, type Position } from '../../../src/torque/order/layouts.ts';
import { generateOrder, numbersOfOrder, orderOfNumbers } from '../../../src/torque/order/orders.ts';
import { apart, closestSpacing, greatestBy, middleOf } from '../../../src/torque/order/spacing.ts';

const at = (x: number, y: number) => ({ x, y });

test('the distance of two fasteners is that of a straight line', () => {
  expect(apart(at(1, 2), at(4, 6))).toBe(5);
  expect(apart(at(4, 6), at(1, 2))).toBe(5);
});

test.each([
  ['the least of all distances', [at(0, 0), at(9, 0), at(9, 3), at(20, 20)], 3],
  ['not one of nothing', [at(1, 1), at(1, 1), at(1, 8)], 7],
  ['1 of one fastener', [at(5, 5)], 1],
  ['1 of fasteners at one place', [at(5, 5), at(5, 5)], 1],
])('the closest spacing is %s', (_, points, expected) => {
  expect(closestSpacing(points)).toBe(expected);
});

test('the middle lies halfway between the outermost, however many stand on a side', () => {
  expect(middleOf([at(1, 4), at(2, 4), at(3, 10), at(9, 6)])).toEqual({ x: 5, y: 7 });
});

test('distances that differ by up to a hundredth of the closest spacing are equal', () => {
  const chosen = (distances: readonly number[]) => greatestBy(distances, (each) => each, 100);
  expect(chosen([7, 50, 49, 48.9, 50])).toEqual([50, 49, 50]);
});

describe('neighbours of one side', () => {
  const ROW = [at(0, 0), at(4, 0), at(8, 0)];

  test.each([
    ['stand side by side', at(0, 0), at(4, 0), ROW, true],
    ['whichever is named first', at(4, 0), at(0, 0), ROW, true],
    ['have none between them', at(0, 0), at(8, 0), ROW, false],
    ['have none between them, from the other end', at(8, 0), at(0, 0), ROW, false],
    ['may have one of another row between them', at(0, 0), at(8, 0), [at(0, 0), at(4, 4), at(8, 0)], true],
    ['may be out of line by a quarter of the spacing', at(0, 0), at(4, 1), [at(0, 0), at(4, 1)], true],
    ['and by no more', at(0, 0), at(4, 1.01), [at(0, 0), at(4, 1.01)], false],
    ['and to the other side', at(0, 3), at(4, 1.99), [at(0, 3), at(4, 1.99)], false],
    ['may be written at one place along the row', at(4, 0), at(4, 0), ROW, true],
  ])('%s', (_, a, b, all, expected) => {
    expect(areNeighboursOfOneSide(a, b, all, 4)).toBe(expected);
  });
});

describe('where fasteners stand', () => {
  const placesOf = (positions: readonly Position[]) => positions.map(({ name, x, y }) => [name, x, y]);

  test('along a row and a head they are counted from 1', () => {
    expect(placesOf(layOut({ kind: 'row', count: 3 }))).toEqual([
      ['1', 1, 0],
      ['2', 2, 0],
      ['3', 3, 0],
    ]);
    expect(placesOf(layOut({ kind: 'head', rows: 2, columns: 2 }))).toEqual([
      ['A1', 1, 1],
      ['A2', 2, 1],
      ['B1', 1, 2],
      ['B2', 2, 2],
    ]);
  });

  test('across a cap they lie to both sides of the crankshaft, side bolts outermost', () => {
    expect(placesOf(layOut({ kind: 'caps', caps: 1, eachCap: 6 }))).toEqual([
      ['1LS', 1, -3],
      ['1LO', 1, -2],
      ['1LI', 1, -1],
      ['1RI', 1, 1],
      ['1RO', 1, 2],
      ['1RS', 1, 3],
    ]);
  });

  test('as many as a joint may have are laid out and ordered, one more is refused', () => {
    const most = layOut({ kind: 'row', count: MOST_FASTENERS });
    expect(MOST_FASTENERS).toBe(200);
    expect(most).toHaveLength(200);
    expect(generateOrder('row', most)).toHaveLength(200);
    expect(layOut({ kind: 'row', count: 1 })).toHaveLength(1);
    expect(() => layOut({ kind: 'caps', caps: 101, eachCap: 2 })).toThrow(
      'a joint has 1 to 200 fasteners, not 202',
    );
  });

  test.each([
    [26, 'Z1'],
    [27, 'AA1'],
    [52, 'AZ1'],
    [53, 'BA1'],
  ])('row %d begins with %s', (rows, name) => {
    expect(layOut({ kind: 'head', rows, columns: 1 }).at(-1)?.name).toBe(name);
  });
});

test('rings of a head end where the distance grows by more than a hundredth of the spacing', () => {
  const row = (...places: readonly number[]) => places.map((x, index) => ({ name: `${index + 1}`, x, y: 0 }));
  // From the middle, 50: 49.5 and 50.5 lie as far out as each other, and so do 0 and 100.
  expect(generateOrder('row', row(0, 49.5, 50.5, 100))).toEqual(['2', '3', '1', '4']);
  // 10.009 is as far out as 10 by a hundredth of the closest spacing, 1; 10.02 is farther.
  expect(generateOrder('row', row(0, 30.991, 41, 51, 82, 40))).toEqual(['3', '6', '4', '2', '5', '1']);
});

test('numbers and order are each other turned round, whatever the order they are written in', () => {
  const numbers = new Map([
    ['c', 2],
    ['a', 3],
    ['b', 1],
  ]);
  expect(orderOfNumbers(numbers)).toEqual({ order: ['b', 'c', 'a'] });
  expect([...numbersOfOrder(['b', 'c', 'a'])]).toEqual([
    ['b', 1],
    ['c', 2],
    ['a', 3],
  ]);
  expect(orderOfNumbers(new Map())).toEqual({ order: [] });
});
