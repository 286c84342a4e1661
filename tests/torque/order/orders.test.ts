import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Layout, layOut, type Position } from '../../../src/torque/order/layouts.ts';
import { generateOrder, numbersOfOrder, orderOfNumbers } from '../../../src/torque/order/orders.ts';

const orderOf = (layout: Layout): string => generateOrder(layout.kind, layOut(layout)).join(' ');

describe('the generated order, looked at', () => {
  test.each([
    [{ kind: 'row', count: 9 }, '5 4 6 3 7 2 8 1 9'],
    [{ kind: 'row', count: 4 }, '2 3 1 4'],
    [{ kind: 'row', count: 1 }, '1'],
    [{ kind: 'caps', caps: 5, eachCap: 2 }, '3L 3R 2L 2R 4L 4R 1L 1R 5L 5R'],
    [{ kind: 'caps', caps: 4, eachCap: 2 }, '2L 2R 3L 3R 1L 1R 4L 4R'],
    [{ kind: 'caps', caps: 3, eachCap: 4 }, '2LI 2RI 2LO 2RO 1LI 1RI 1LO 1RO 3LI 3RI 3LO 3RO'],
    [{ kind: 'caps', caps: 1, eachCap: 6 }, '1LI 1RI 1LO 1RO 1LS 1RS'],
    [{ kind: 'head', rows: 2, columns: 5 }, 'A3 B3 A2 B4 B2 A4 B1 A5 A1 B5'],
    [{ kind: 'head', rows: 2, columns: 4 }, 'A2 B3 A3 B2 A4 B1 B4 A1'],
    [{ kind: 'circle', count: 4 }, '1 3 2 4'],
    [{ kind: 'circle', count: 5 }, '1 3 5 2 4'],
    [{ kind: 'circle', count: 6 }, '1 4 2 5 3 6'],
    [{ kind: 'circle', count: 8 }, '1 5 3 7 2 6 4 8'],
  ] as const)('%j: %s', (layout, order) => {
    expect(orderOf(layout)).toBe(order);
  });

  test('measured positions a little out of place give the order of the exact ones', () => {
    const shaken = layOut({ kind: 'head', rows: 2, columns: 5 }).map((each, index) => ({
      ...each,
      x: each.x * 92 + (index % 3) * 0.2,
      y: each.y * 92 - (index % 2) * 0.2,
    }));
    expect(generateOrder('head', shaken).join(' ')).toBe('A3 B3 A2 B4 B2 A4 B1 A5 A1 B5');
  });

  test('caps listed in any order of sides still change sides from cap to cap', () => {
    const names = ['1L', '1R', '2R', '2L', '3L', '3R'];
    const places = names.map((name) => ({ name, x: Number(name[0]), y: name[1] === 'L' ? -1 : 1 }));
    expect(generateOrder('caps', places).join(' ')).toBe('2R 2L 1R 1L 3R 3L');
  });

  test('more fasteners than any joint has are refused before they are worked on', () => {
    const many = Array.from({ length: 201 }, (_, x) => ({ name: `${x}`, x, y: 0 }));
    expect(() => generateOrder('circle', many)).toThrow('201 fasteners are more than 200');
  });

  test('fasteners written at one place are still each tightened once', () => {
    const heap = ['a', 'b', 'c'].map((name) => ({ name, x: 1, y: 1 }));
    for (const kind of ['row', 'caps', 'head', 'circle'] as const) {
      expect([...generateOrder(kind, heap)].sort()).toEqual(['a', 'b', 'c']);
    }
    expect(generateOrder('head', [])).toEqual([]);
  });
});

const LAYOUTS: fc.Arbitrary<Layout> = fc.oneof(
  fc.record({ kind: fc.constant('row' as const), count: fc.integer({ min: 1, max: 40 }) }),
  fc.record({
    kind: fc.constant('caps' as const),
    caps: fc.integer({ min: 1, max: 11 }),
    eachCap: fc.constantFrom(2 as const, 4 as const, 6 as const),
  }),
  fc.record({
    kind: fc.constant('head' as const),
    rows: fc.integer({ min: 1, max: 6 }),
    columns: fc.integer({ min: 1, max: 14 }),
  }),
  fc.record({ kind: fc.constant('circle' as const), count: fc.integer({ min: 1, max: 40 }) }),
);
const SPREADS = fc.constantFrom(0.5, 1, 1.7, 4);

interface Walked {
  readonly visited: readonly Position[];
  /** Distance of each from the centre: along the row for caps, which are tightened one by one. */
  readonly out: readonly number[];
}

/** Positions with the columns drawn apart, walked in the generated order. */
function walked(layout: Layout, spread: number): Walked {
  const stretch = layout.kind === 'circle' ? 1 : spread;
  const positions = layOut(layout).map((each) => ({ ...each, x: each.x * stretch }));
  const byName = new Map(positions.map((each) => [each.name, each]));
  const visited = generateOrder(layout.kind, positions).flatMap((name) => byName.get(name) ?? []);
  const middle = (of: readonly number[]): number => (Math.min(...of) + Math.max(...of)) / 2;
  const [x, y] = [middle(positions.map((each) => each.x)), middle(positions.map((each) => each.y))];
  const out = visited.map((each) =>
    layout.kind === 'caps' ? Math.abs(each.x - x) : Math.hypot(each.x - x, each.y - y),
  );
  return { visited, out };
}

/** By their names alone: one side's letters equal and one step apart along the joint, or round the circle. */
function areNeighbours(layout: Layout, a: string, b: string): boolean {
  const split = (name: string) => ({ along: Number(name.replace(/\D/g, '')), side: name.replace(/\d/g, '') });
  const [from, to] = [split(a), split(b)];
  const steps = Math.abs(from.along - to.along);
  const round = layout.kind === 'circle' && steps === layout.count - 1;
  return from.side === to.side && (steps === 1 || round);
}

describe('every generated order', () => {
  const anyJoint = (check: (layout: Layout, joint: Walked) => void): void =>
    fc.assert(fc.property(LAYOUTS, SPREADS, (layout, spread) => check(layout, walked(layout, spread))));

  test('visits each fastener once', () => {
    anyJoint((layout, { visited }) => {
      const names = layOut(layout).map(({ name }) => name);
      expect(visited.map(({ name }) => name).sort()).toEqual([...names].sort());
    });
  });

  test('starts at the centre and never comes nearer to it again', () => {
    anyJoint((layout, { out }) => {
      if (layout.kind === 'circle') return;
      expect(out[0]).toBeCloseTo(Math.min(...out), 9);
      for (const [index, distance] of out.slice(1).entries()) {
        expect(distance).toBeGreaterThanOrEqual((out[index] ?? 0) - 1e-9);
      }
    });
  });

  test('never tightens two neighbours of one side in a row where another was as far out', () => {
    anyJoint((layout, { visited, out }) => {
      for (const [index, each] of visited.entries()) {
        const last = visited[index - 1];
        if (last === undefined || !areNeighbours(layout, last.name, each.name)) continue;
        const alternatives = visited
          .slice(index)
          .filter((_, later) => Math.abs((out[index + later] ?? 0) - (out[index] ?? 0)) < 1e-9);
        for (const other of alternatives) expect(areNeighbours(layout, last.name, other.name)).toBe(true);
      }
    });
  });

  test('changes ends in a row wherever two are equally far out', () => {
    anyJoint((layout, { visited, out }) => {
      if (layout.kind !== 'row') return;
      const middle = visited.reduce((sum, { x }) => sum + x, 0) / visited.length;
      for (const [index, each] of visited.entries()) {
        const last = visited[index - 1];
        if (last === undefined || Math.abs((out[index] ?? 0) - (out[index - 1] ?? 0)) > 1e-9) continue;
        expect((last.x - middle) * (each.x - middle)).toBeLessThan(0);
      }
    });
  });

  test('changes sides at every fastener of a row of caps, and finishes a cap before the next', () => {
    anyJoint((layout, { visited }) => {
      if (layout.kind !== 'caps') return;
      for (const [index, each] of visited.entries()) {
        const last = visited[index - 1];
        if (last === undefined) continue;
        expect(each.y * last.y).toBeLessThan(0);
        if (index % layout.eachCap !== 0) expect(each.x).toBe(last.x);
      }
    });
  });

  test('is the same whether positions are in inches or millimetres, from any point', () => {
    anyJoint((layout) => {
      const inMillimetres = layOut(layout).map((each) => ({
        ...each,
        x: each.x * 25.4 + 300,
        y: each.y * 25.4 - 7,
      }));
      expect(generateOrder(layout.kind, inMillimetres).join(' ')).toBe(orderOf(layout));
    });
  });
});

describe('an order written as numbers beside the fasteners', () => {
  const numbered = (...numbers: number[]) =>
    new Map(numbers.map((number, index): [string, number] => [`${index + 1}`, number]));
  const PRINTED = numbered(8, 5, 3, 1, 2, 4, 6, 9, 7);

  test('the straight row of nine of TM 5-3800-205-23-1 is visited as it is drawn', () => {
    expect(orderOfNumbers(PRINTED)).toEqual({ order: ['4', '5', '3', '6', '2', '7', '9', '1', '8'] });
  });

  test('and comes back as the same numbers', () => {
    const found = orderOfNumbers(PRINTED);
    if ('problem' in found) throw new Error(found.problem);
    const numbers = numbersOfOrder(found.order);
    expect([...PRINTED.keys()].map((name) => numbers.get(name))).toEqual([8, 5, 3, 1, 2, 4, 6, 9, 7]);
  });

  test('it is no centre-out order: the drawing begins beside the middle and ends at the last but one', () => {
    expect(orderOf({ kind: 'row', count: 9 })).not.toBe('4 5 3 6 2 7 9 1 8');
  });

  test.each([
    [numbered(1, 2, 4), 'the numbers must run from 1 to 3; 3 has 4'],
    [numbered(1, 2, 2), 'the numbers must run from 1 to 3; 3 has 2'],
    [numbered(0, 1, 2), 'the numbers must run from 1 to 3; 1 has 0'],
    [numbered(1, 1.5, 3), 'the numbers must run from 1 to 3; 2 has 1.5'],
  ])('numbers with a gap, twice the same or not from 1 are refused', (numbers, problem) => {
    expect(orderOfNumbers(numbers)).toEqual({ problem });
  });
});
