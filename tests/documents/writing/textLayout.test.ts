import { expect, it } from 'vitest';
import { type Node, parseDocument } from 'yaml';
import {
  columnOf,
  contentEnd,
  endOfLastLine,
  indentRest,
  isFlow,
  lineBreakAt,
  lineEnd,
  pastComments,
} from '../../../src/documents/writing/textLayout.ts';

it.each([
  ['', 0, 0],
  ['ab', 1, 1],
  ['ab\ncd', 2, 2],
  ['ab\ncd', 3, 0],
  ['ab\ncd', 4, 1],
  ['\n\nx', 2, 0],
  ['\nab', 0, 0],
  ['\nab', 1, 0],
  ['\ufeffab', 2, 1],
  ['\ufeffab\ncd', 5, 1],
])('in %j offset %i stands in column %i', (text, offset, column) => {
  expect(columnOf(text, offset)).toBe(column);
});

it.each([
  ['ab\ncd\n', 0, 2, '\n'],
  ['ab\ncd\n', 2, 2, '\n'],
  ['ab\ncd\n', 3, 5, '\n'],
  ['ab\r\ncd\n', 0, 2, '\r\n'],
  ['ab\r\ncd\n', 4, 6, '\n'],
  ['ab\r\ncd', 5, 6, '\r\n'],
  ['ab', 0, 2, '\n'],
  ['\nab', 0, 0, '\n'],
  ['', 0, 0, '\n'],
])('in %j the line of offset %i ends at %i, and breaks by %j', (text, offset, end, lineBreak) => {
  expect([lineEnd(text, offset), lineBreakAt(text, offset)]).toEqual([end, lineBreak]);
});

const rootOf = (text: string): Node => parseDocument(text).contents as Node;

it.each([
  ['a word # c\n', true, 6, 10],
  ['[1, 2] # c\n', true, 6, 10],
  ['{ a: 1 }\nb', true, 8, 8],
  ['- 1\n- [2]  # c\n\n', false, 9, 14],
  ['a: 1\nb:\n  c: x # d\n', false, 14, 18],
  ['a: 1\nb:\n', false, 7, 7],
  ['a: |\n  x\n\n', false, 9, 8],
  ['a: |\r\n  x\r\n', false, 11, 9],
])(
  'of %j: whether it ends where its range does, its end, and that of its last line',
  (text, flow, end, lastLine) => {
    const root = rootOf(text);
    expect([isFlow(root), contentEnd(root), endOfLastLine(text, root)]).toEqual([flow, end, lastLine]);
  },
);

it.each([
  ['a\n  # b\n  # c\nd', 0, 13],
  ['a\n  # b\n# c\nd', 0, 7],
  ['a\n  # b\n\n  # c\n', 0, 7],
  ['a\r\n  # b\r\nd', 0, 8],
  ['a\n  # b', 2, 1],
  ['a\n   # b', 2, 8],
  ['a\n  b', 0, 1],
  ['a', 0, 1],
])('in %j comments further in than column %i end at %i', (text, column, at) => {
  expect(pastComments(text, 1, column)).toBe(at);
});

it('lines but the first are indented, and empty ones stay empty', () => {
  expect(indentRest('a\nb\n\n  c\n', 2)).toBe('a\n  b\n\n    c\n');
});
