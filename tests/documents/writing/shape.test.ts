import { describe, expect, it } from 'vitest';
import {
  alter,
  findNode,
  parseShape,
  partAt,
  type Shape,
  sameShape,
} from '../../../src/documents/writing/shape.ts';

const shapeOf = (text: string): Shape | undefined => parseShape(text)?.shape;

const WHOLE = 'a: 0.0020\nb: x\nc:\nd: ~\ne: true\nf: [1, [~]]\n3: { g: "1" }\n';
const SHAPE: Shape = {
  map: [
    ['a', 'number 0.0020'],
    ['b', 'string x'],
    ['c', 'null'],
    ['d', 'null'],
    ['e', 'boolean true'],
    ['f', { list: ['number 1', { list: ['null'] }] }],
    ['3', { map: [['g', 'string 1']] }],
  ],
};

describe('what a document says', () => {
  it.each<[string, string, Shape]>([
    ['all that it may hold', WHOLE, SHAPE],
    ['a list', '- 1\n', { list: ['number 1'] }],
    ['a text', 'x\n', 'string x'],
    [
      'a key twice, which is judged elsewhere',
      'a: 1\na: 2\n',
      {
        map: [
          ['a', 'number 1'],
          ['a', 'number 2'],
        ],
      },
    ],
    ['a merge sign, which is a key', '<<: { a: 1 }\n', { map: [['<<', { map: [['a', 'number 1']] }]] }],
    ['a key alone', '{ front }', { map: [['front', 'null']] }],
    ['a number by its digits', '[0x1F, 1e5]', { list: ['number 0x1F', 'number 1e5'] }],
  ])('%s', (_, text, wanted) => {
    expect(shapeOf(text)).toEqual(wanted);
  });

  it.each([
    ['nothing', ''],
    ['a comment alone', '# c\n'],
    ['what is no YAML', 'a: [\n'],
    ['two documents', 'a: 1\n---\nb: 1\n'],
    ['a directive', '%FOO\n---\na: 1\n'],
    ['an alias', 'a: *x\n'],
    ['an alias in a list', 'a: &x 1\nb: [*x]\n'],
    ['a list as a key', '? [a]\n: 1\n'],
    ...['&x', '!t', '!!map', '!!seq', '!!str'].flatMap((mark) =>
      ['1', '[1]', '{ b: 1 }'].map((value) => [`${mark} before ${value}`, `a: ${mark} ${value}\n`]),
    ),
    ['an anchor in a list', 'a: [&x 1]\n'],
    ['an anchor before the whole', '&x\na: 1\n'],
  ])('%s is no plain document', (_, text) => {
    expect(parseShape(text)).toBeUndefined();
  });
});

describe('what stands at a path', () => {
  const root = parseShape('a:\n  b: [1, { c: 2 }]\nd:\n1: x\ne: { f: [3] }\n')?.node;
  const found = (...path: (string | number)[]) => {
    const at = root && findNode(root, path);
    return at && [String(at.node).trim(), at.key && String(at.key), at.inFlow];
  };

  it.each([
    [
      ['a', 'b'],
      ['[1,{"c":2}]', 'b', false],
    ],
    [
      ['a', 'b', 0],
      ['1', undefined, true],
    ],
    [
      ['a', 'b', 1, 'c'],
      ['2', 'c', true],
    ],
    [['d'], ['null', 'd', false]],
    [['e'], ['{"f":[3]}', 'e', false]],
    [
      ['e', 'f'],
      ['[3]', 'f', true],
    ],
    [
      ['e', 'f', 0],
      ['3', undefined, true],
    ],
  ])('%j', (path, wanted) => {
    expect(found(...path)).toEqual(wanted);
  });

  it.each([[['x']], [['a', 'b', 2]], [['a', 'b', '0']], [['a', 0]], [['d', 'x']], [['a', 'b', 0, 'x']]])(
    'nothing stands at %j',
    (path) => {
      expect(found(...path)).toBeUndefined();
    },
  );

  it('is the whole where the path is empty', () => {
    expect(root && findNode(root, [])).toEqual({ node: root, key: undefined, inFlow: false });
  });
});

describe('a part of a shape', () => {
  it.each([
    [[], SHAPE],
    [['a'], 'number 0.0020'],
    [['f', 1, 0], 'null'],
    [['3', 'g'], 'string 1'],
    [['x'], undefined],
    [['f', 2], undefined],
    [['a', 'x'], undefined],
    [['f', 1, 0, 0], undefined],
  ])('at %j', (path, wanted) => {
    expect(partAt(SHAPE, path)).toEqual(wanted);
  });

  const small: Shape = {
    map: [
      ['a', { list: ['number 1', 'number 2'] }],
      ['b', 'null'],
      ['b', 'null'],
    ],
  };
  const added = (part: Shape): Shape => `${JSON.stringify(part)} changed`;

  it.each<[(string | number)[], Shape]>([
    [[], added(small)],
    [
      ['a', 1],
      {
        map: [
          ['a', { list: ['number 1', '"number 2" changed'] }],
          ['b', 'null'],
          ['b', 'null'],
        ],
      },
    ],
    [
      ['b'],
      {
        map: [
          ['a', { list: ['number 1', 'number 2'] }],
          ['b', '"null" changed'],
          ['b', 'null'],
        ],
      },
    ],
    [['c'], small],
    [['a', 2], small],
    [['b', 'c'], small],
  ])('at %j is changed alone, the first of that name', (path, wanted) => {
    expect(alter(small, path, added)).toEqual(wanted);
  });

  it('is the same only where all of it is, in its order', () => {
    expect(sameShape(SHAPE, JSON.parse(JSON.stringify(SHAPE)))).toBe(true);
    expect(
      sameShape(
        {
          map: [
            ['a', 'null'],
            ['b', 'null'],
          ],
        },
        {
          map: [
            ['b', 'null'],
            ['a', 'null'],
          ],
        },
      ),
    ).toBe(false);
    expect(sameShape('number 1', 'number 1.0')).toBe(false);
  });
});
