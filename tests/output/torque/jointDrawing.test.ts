import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { drawJoint } from '../../../src/output/torque/jointDrawing.ts';
import { type Layout, layOut, type Position } from '../../../src/torque/order/layouts.ts';
import { generateOrder } from '../../../src/torque/order/orders.ts';

const drawn = (layout: Layout, width: number, names?: readonly string[]): readonly string[] => {
  const positions = layOut(layout, names);
  return drawJoint({ kind: layout.kind, positions, order: generateOrder(layout.kind, positions), width });
};

/** The lines of an expected drawing, between a first and a last line that are empty. */
const lines = (expected: string): readonly string[] => expected.split('\n').slice(1, -1);

describe('a joint is drawn as it lies on the bench', () => {
  test('five main caps, two bolts each, with the crankshaft behind them', () => {
    expect(drawn({ kind: 'caps', caps: 5, eachCap: 2 }, 80)).toEqual(
      lines(`
+────────+ +────────+ +────────+ +────────+ +────────+
|  (7)   | |  (3)   | |  (1)   | |  (5)   | |  (9)   |
|   1L   | |   2L   | |   3L   | |   4L   | |   5L   |
|········| |········| |········| |········| |········|
|  (8)   | |  (4)   | |  (2)   | |  (6)   | |  (10)  |
|   1R   | |   2R   | |   3R   | |   4R   | |   5R   |
+────────+ +────────+ +────────+ +────────+ +────────+
(1) is tightened first; below it is the fastener's name
`),
    );
  });

  test('seven caps of four bolts close up to fit 60 columns', () => {
    expect(drawn({ kind: 'caps', caps: 7, eachCap: 4 }, 60)).toEqual(
      lines(`
+─────+ +─────+ +─────+ +─────+ +─────+ +─────+ +─────+
|(23) | |(15) | | (7) | | (3) | |(11) | |(19) | |(27) |
| 1LO | | 2LO | | 3LO | | 4LO | | 5LO | | 6LO | | 7LO |
|     | |     | |     | |     | |     | |     | |     |
|(21) | |(13) | | (5) | | (1) | | (9) | |(17) | |(25) |
| 1LI | | 2LI | | 3LI | | 4LI | | 5LI | | 6LI | | 7LI |
|·····| |·····| |·····| |·····| |·····| |·····| |·····|
|(22) | |(14) | | (6) | | (2) | |(10) | |(18) | |(26) |
| 1RI | | 2RI | | 3RI | | 4RI | | 5RI | | 6RI | | 7RI |
|     | |     | |     | |     | |     | |     | |     |
|(24) | |(16) | | (8) | | (4) | |(12) | |(20) | |(28) |
| 1RO | | 2RO | | 3RO | | 4RO | | 5RO | | 6RO | | 7RO |
+─────+ +─────+ +─────+ +─────+ +─────+ +─────+ +─────+
(1) is tightened first; below it is the fastener's name
`),
    );
  });

  test('a head of two rows', () => {
    expect(drawn({ kind: 'head', rows: 2, columns: 5 }, 80)).toEqual(
      lines(`
+────────────────────────────────────────+
|  (9)     (3)     (1)     (6)     (8)   |
|   A1      A2      A3      A4      A5   |
|                                        |
|  (7)     (5)     (2)     (4)     (10)  |
|   B1      B2      B3      B4      B5   |
+────────────────────────────────────────+
(1) is tightened first; below it is the fastener's name
`),
    );
  });

  test('a head of two rows of thirteen, too tight for names, has them in a list below', () => {
    expect(drawn({ kind: 'head', rows: 2, columns: 13 }, 60)).toEqual(
      lines(`
+────────────────────────────────────────────────────+
| 25  19  17  11  9   3   1   6   8   14  16  22  24 |
|                                                    |
| 23  21  15  13  7   5   2   4   10  12  18  20  26 |
+────────────────────────────────────────────────────+
(1) A7  (2) B7  (3) A6  (4) B8  (5) B6  (6) A8  (7) B5
(8) A9  (9) A5  (10) B9  (11) A4  (12) B10  (13) B4
(14) A10  (15) B3  (16) A11  (17) A3  (18) B11  (19) A2
(20) B12  (21) B2  (22) A12  (23) B1  (24) A13  (25) A1
(26) B13
`),
    );
  });

  test('a straight row', () => {
    expect(drawn({ kind: 'row', count: 9 }, 80)).toEqual(
      lines(`
+───────────────────────────────────────────────────────────────+
|  (8)    (6)    (4)    (2)    (1)    (3)    (5)    (7)    (9)  |
|   1      2      3      4      5      6      7      8      9   |
+───────────────────────────────────────────────────────────────+
(1) is tightened first; below it is the fastener's name
`),
    );
  });

  test('a bolt circle of eight', () => {
    expect(drawn({ kind: 'circle', count: 8 }, 60)).toEqual(
      lines(`
      · (1) 1 ·
  (8) 8       (5) 2
   ··           ··
  ·               ·
(4) 7           (3) 3
  ·               ·
   ··           ··
  (6) 6       (7) 4
      · (2) 5 ·
(1) is tightened first; beside it is the fastener's name
`),
    );
  });

  test('a head with a staggered middle row keeps each fastener between its neighbours', () => {
    const places = [
      [1, 1],
      [3, 1],
      [5, 1],
      [2, 2],
      [4, 2],
      [1, 3],
      [3, 3],
      [5, 3],
    ] as const;
    const positions = places.map(([x, y], index) => ({ name: `s${index}`, x: x * 31, y: y * 40 }));
    const order = generateOrder('head', positions);
    expect(drawJoint({ kind: 'head', positions, order, width: 60 })).toEqual(
      lines(`
+───────────────────────────────────+
|  (5)           (3)           (8)  |
|  s0            s1            s2   |
|                                   |
|         (1)           (2)         |
|         s3            s4          |
|                                   |
|  (7)           (4)           (6)  |
|  s5            s6            s7   |
+───────────────────────────────────+
(1) is tightened first; below it is the fastener's name
`),
    );
  });

  test('the printed row of nine of TM 5-3800-205-23-1 is drawn with its own numbers', () => {
    const order = ['4', '5', '3', '6', '2', '7', '9', '1', '8'];
    const drawing = drawJoint({
      kind: 'row',
      positions: layOut({ kind: 'row', count: 9 }),
      order,
      width: 80,
    });
    expect(
      drawing[1]
        ?.replace(/[^\d ]/g, '')
        .trim()
        .split(/ +/),
    ).toEqual('8 5 3 1 2 4 6 9 7'.split(' '));
  });
});

describe('a joint that is hard to draw', () => {
  const at = (name: string, x: number, y: number): Position => ({ name, x, y });

  test('forty in a row do not fit 60 columns: the list stands alone', () => {
    const drawing = drawn({ kind: 'row', count: 40 }, 60);
    expect(drawing[0]).toBe('(1) 20  (2) 21  (3) 19  (4) 22  (5) 18  (6) 23  (7) 17');
    expect(drawing.filter((line) => !line.startsWith('('))).toEqual([]);
    expect(drawing.at(-1)).toMatch(/\(40\) 40$/);
  });

  test('two fasteners written at one place are listed, not drawn over each other', () => {
    const positions = [at('a', 1, 1), at('b', 1, 1)];
    expect(drawJoint({ kind: 'head', positions, order: ['b', 'a'], width: 60 })).toEqual(['(1) b  (2) a']);
  });

  test('a fastener that the order leaves out has a dash for its number', () => {
    const positions = [at('a', 1, 1), at('b', 2, 1)];
    expect(drawJoint({ kind: 'row', positions, order: ['b'], width: 60 })[1]).toBe('|  (-)    (1)  |');
  });

  test('a name longer than the line is cut', () => {
    const positions = [at('x'.repeat(100), 1, 1)];
    expect(drawJoint({ kind: 'row', positions, order: [], width: 60 }).at(-1)).toBe(`(-) ${'x'.repeat(55)}·`);
  });

  test('letters twice as wide as others keep the frame straight', () => {
    const drawing = drawJoint({
      kind: 'row',
      positions: [at('前', 1, 1), at('b', 2, 1)],
      order: ['前', 'b'],
      width: 60,
    });
    expect(drawing.slice(0, 4).map((line) => stringWidth(line))).toEqual([16, 16, 16, 16]);
  });

  test('a bolt circle with names too long for its width has them in a list below', () => {
    const names = ['a', 'b', 'c', 'd'].map((letter) => letter.repeat(50));
    const drawing = drawn({ kind: 'circle', count: 4 }, 60, names);
    expect(drawing.map((line) => stringWidth(line)).filter((columns) => columns > 60)).toEqual([]);
    expect(drawing.slice(-4)).toEqual([0, 2, 1, 3].map((index, place) => `(${place + 1}) ${names[index]}`));
  });

  test('no fasteners make no drawing', () => {
    for (const kind of ['head', 'circle'] as const) {
      expect(drawJoint({ kind, positions: [], order: [], width: 60 })).toEqual([]);
    }
  });
});

describe('every drawing', () => {
  const joints = fc.record({
    layout: fc.oneof(
      fc.record({ kind: fc.constant('row' as const), count: fc.integer({ min: 1, max: 30 }) }),
      fc.record({
        kind: fc.constant('caps' as const),
        caps: fc.integer({ min: 1, max: 9 }),
        eachCap: fc.constantFrom(2 as const, 4 as const, 6 as const),
      }),
      fc.record({
        kind: fc.constant('head' as const),
        rows: fc.integer({ min: 1, max: 5 }),
        columns: fc.integer({ min: 1, max: 14 }),
      }),
      fc.record({ kind: fc.constant('circle' as const), count: fc.integer({ min: 1, max: 36 }) }),
    ),
    width: fc.integer({ min: 60, max: 120 }),
  });

  test('fits its width, in ASCII with edges and dots', () => {
    fc.assert(
      fc.property(joints, ({ layout, width }) => {
        const drawing = drawn(layout, width);
        for (const line of drawing) {
          expect(line.length).toBeLessThanOrEqual(width);
          expect(line).toMatch(/^[ -~·─]*$/);
        }
      }),
    );
  });

  test('is the same whatever order the document lists the fasteners in', () => {
    fc.assert(
      fc.property(joints, ({ layout, width }) => {
        const { kind } = layout;
        const positions = layOut(layout);
        const order = generateOrder(kind, positions);
        const backwards = positions.toReversed();
        expect(drawJoint({ kind, positions: backwards, order, width })).toEqual(
          drawJoint({ kind, positions, order, width }),
        );
      }),
    );
  });

  test('shows every place in the order once with its number, and every name', () => {
    fc.assert(
      fc.property(joints, ({ layout, width }) => {
        const names = layOut(layout).map((_, index) => `n${index}x`);
        const text = drawn(layout, width, names)
          .join('\n')
          .replace(/^\(1\) is.*$/m, '');
        for (const [index, name] of names.entries()) {
          expect(text.split(name)).toHaveLength(2);
          expect(text.split(`(${index + 1})`).length).toBeGreaterThan(1);
        }
      }),
    );
  });
});
