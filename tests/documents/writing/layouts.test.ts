import { describe, expect, it } from 'vitest';
import { fillScalars } from '../../../src/documents/writing/fill.ts';
import {
  appendItem,
  insertEntry,
  replaceScalar,
  type SpliceResult,
} from '../../../src/documents/writing/splice.ts';

const problem = (reason: string, message: string, help: string) => ({
  ok: false,
  problem: { reason, message, help },
});
const LAYOUT = 'nothing was changed; add it by hand, or write it as a block, one item a line';
const noRoom = (path: string) =>
  problem('layout', `${path} is written in a way that cannot be added to without touching the rest`, LAYOUT);
const nothingAt = (path: string) =>
  problem('place', `the document has nothing at ${path}`, 'add it by hand first');
const noYaml = (text: string) =>
  problem('text', `\`${text}\` is not plain YAML`, 'put it in quotes, or write it plainly');
const notPlain = problem('document', 'the document is not plain YAML', 'correct it first');

/** The text as it is afterwards, after a check that it differs from the other in the one stretch that is told; else the problem. */
function after(before: string, result: SpliceResult): unknown {
  if (!result.ok) return result;
  const { text, start, removed, inserted } = result.value;
  expect(before.slice(0, start) + removed + before.slice(start + removed.length)).toBe(before);
  expect(before.slice(0, start) + inserted + before.slice(start + removed.length)).toBe(text);
  return text;
}

type Row = readonly [before: string, path: (string | number)[], given: string, after: unknown];

describe('an item', () => {
  it.each<Row>([
    ['a: [ ]\n', ['a'], '1', 'a:\n  - 1\n'],
    ['a: []  \nb: 1\n', ['a'], '1', 'a:   \n  - 1\nb: 1\n'],
    ['a: [ ] # c\n', ['a'], '1', 'a:  # c\n  - 1\n'],
    ['[]', [], '1', '[1]'],
    ['[ ]', [], '1', '[ 1 ]'],
    ['a: \n', ['a'], '1', 'a: \n  - 1\n'],
    ['a: []\n', ['a'], '1', 'a:\n  - 1\n'],
    ['a:\n  -   1\n', ['a'], '2', 'a:\n  -   1\n  -   2\n'],
    ['- a\n', [], 'b', '- a\n- b\n'],
    ['b: { a: [] }\n', ['b', 'a'], '1', 'b: { a: [1] }\n'],
    ['a:\n', ['a'], '- 1', 'a:\n  - - 1\n'],
    ['a: [1 ,]\n', ['a'], '2', 'a: [1 , 2]\n'],
    ['a: [1 # x\n]\n', ['a'], '2', 'a: [1, 2 # x\n]\n'],
    ['a:\n  - [1]\n', ['a', 0], '2', 'a:\n  - [1, 2]\n'],
    ['a:\n  - 1\n', ['a'], 'b: 1\n\n\n', 'a:\n  - 1\n  - b: 1\n'],
    ['a:\n  - 1\n', ['a'], 'b: 1\r\nc: 2\r\n', 'a:\n  - 1\n  - b: 1\n    c: 2\n'],
    ['a:\n  -\n    b: 1\n', ['a'], 'c: 1\nd: 2', 'a:\n  -\n    b: 1\n  - c: 1\n    d: 2\n'],
    ['  a:\n    - 1\n', ['a'], '2', '  a:\n    - 1\n    - 2\n'],
    ['a:\n- - 1\n  - 2\n', ['a', 0], '3', 'a:\n- - 1\n  - 2\n  - 3\n'],
    ['a: {}\n', ['a'], '1', noRoom('a')],
    ['a: [\n]\n', ['a'], '1', noRoom('a')],
    ['b: { a: }\n', ['b', 'a'], '1', noRoom('b / a')],
    ['a: ~\n', ['a'], '1', noRoom('a')],
    ['a: ""\n', ['a'], '1', noRoom('a')],
    ['b: { a }\n', ['b', 'a'], '1', nothingAt('b / a')],
    ['a:\n  - 1\n', ['b', 0], '1', nothingAt('b / 0')],
    ['a:\n  - 1\n', ['a'], '[1', noYaml('[1')],
    ['a: [', ['a'], '1', notPlain],
  ])('%j at %j gets %j', (before, path, item, wanted) => {
    expect(after(before, appendItem(before, path, item))).toEqual(wanted);
  });
});

describe('an entry', () => {
  it.each<Row>([
    ['{}', [], '1', '{ k: 1 }'],
    ['{ }', [], '1', '{ k: 1 }'],
    ['a: {}\n', ['a'], '1', 'a: { k: 1 }\n'],
    ['a:\n', ['a'], '1', 'a:\n  k: 1\n'],
    ['a: [{}]\n', ['a', 0], '1', 'a: [{ k: 1 }]\n'],
    ['x: { a: {} }\n', ['x', 'a'], '1', 'x: { a: { k: 1 } }\n'],
    ['a: 1\n', [], '[1, 2]', 'a: 1\nk: [1, 2]\n'],
    ['a: 1\n', [], 'c: 1\nd:\n  e: 1', 'a: 1\nk:\n  c: 1\n  d:\n    e: 1\n'],
    ['a: { b: 1, }\n', ['a'], '2', 'a: { b: 1, k: 2 }\n'],
    ['a: { b }\n', ['a'], '2', 'a: { b, k: 2 }\n'],
    ['a:\n  b: |\n    x\n', ['a'], '1', 'a:\n  b: |\n    x\n  k: 1\n'],
    ['a:\n  b: |\n    x', ['a'], '1', 'a:\n  b: |\n    x\n  k: 1'],
    ['a:\n  b:\n  # x\n# y\n', ['a'], '1', 'a:\n  b:\n  k: 1\n  # x\n# y\n'],
    ['a:\n  b: 1\n', ['a'], 'd: 1\ne: 2', 'a:\n  b: 1\n  k:\n    d: 1\n    e: 2\n'],
    ['- a: 1\n', [0], '2', '- a: 1\n  k: 2\n'],
    ['a: []\n', ['a'], '1', noRoom('a')],
    ['a: [~]\n', ['a', 0], '1', noRoom('a / 0')],
    ['a: {\n}\n', ['a'], '1', noRoom('a')],
    ['a: 1\n', ['a'], '1', noRoom('a')],
    ['a: { b: 1 }\n', ['a'], 'd: 1\ne: 2', noRoom('a')],
    ['k: 1\n', [], '2', problem('exists', 'k is there already', 'change it there')],
  ])('%j at %j gets k with %j', (before, path, value, wanted) => {
    expect(after(before, insertEntry(before, path, 'k', value))).toEqual(wanted);
  });
});

describe('a scalar', () => {
  it.each<Row>([
    ['a:   \n', ['a'], '2', 'a:   2\n'],
    ['{a: , b: 1}\n', ['a'], '2', '{a: 2, b: 1}\n'],
    ['{a:, b: 1}\n', ['a'], '2', '{a: 2, b: 1}\n'],
    ['a: #c\n', ['a'], '2', 'a: 2 #c\n'],
    ['- \n', [0], '2', '- 2\n'],
    ['-\n', [0], '2', '- 2\n'],
    ['1\n', [], '2', '2\n'],
    ['a: "1"\n', ['a'], '[1, 2]', 'a: [1, 2]\n'],
    ['a: >\n x\n', ['a'], '2', noRoom('a')],
    ['a: |\n x\n', ['a'], '2', noRoom('a')],
    ['{ a }\n', ['a'], '2', nothingAt('a')],
    ['a: 1\n', ['a'], '[', noYaml('[')],
  ])('%j at %j becomes %j', (before, path, replacement, wanted) => {
    expect(after(before, replaceScalar(before, path, replacement))).toEqual(wanted);
  });

  it.each([
    ['a: [', [], notPlain],
    [
      'a: 1\n',
      [{ path: ['b'], text: '1' }],
      problem('place', 'nothing can be put at b', 'fill it in by hand'),
    ],
    [
      'a: { b: [1] }\n',
      [{ path: ['a', 'b'], text: '1' }],
      problem('place', 'nothing can be put at a / b', 'fill it in by hand'),
    ],
    ['a: 1\n', [{ path: ['a'], text: '[' }], problem('text', '`[` is not plain YAML', 'write it plainly')],
    [
      'a: { b: 1 }\n',
      [{ path: ['a', 'b'], text: '1, c: 2' }],
      problem('layout', 'the readings cannot be filled in without touching the rest', 'fill them in by hand'),
    ],
    [
      'a: { b: 1 }\n',
      [{ path: ['a', 'b'], text: '1 }' }],
      problem('layout', 'the readings cannot be filled in without touching the rest', 'fill them in by hand'),
    ],
    ['a: 1\n', [], { ok: true, value: 'a: 1\n' }],
    [
      'a: 1\nb: 2\nc: [~, ~]\n',
      [
        { path: ['c', 1], text: '9' },
        { path: ['a'], text: '10' },
        { path: ['c', 0], text: '8' },
      ],
      { ok: true, value: 'a: 10\nb: 2\nc: [8, 9]\n' },
    ],
  ])('%j is filled in, all or nothing: %j', (before, fillings, wanted) => {
    expect(fillScalars(before, fillings)).toEqual(wanted);
  });
});
