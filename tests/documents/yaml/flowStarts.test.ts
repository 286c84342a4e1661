import { expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { flowStarts } from '../../../src/documents/yaml/flowStarts.ts';

const startsIn = (text: string) => Object.fromEntries(flowStarts(parseDocument(text).contents));

test.each([
  ['nothing', '', {}],
  ['no brackets', 'a:\n  - 1\n', {}],
  ['a list in a block', 'a:\n  - [1, 2]\n', { 13: 7 }],
  ['a map in a list, both in brackets', '[1, { a: [2] }]', { 15: 0, 14: 4, 12: 9 }],
  ['a list as a key', '? [a]\n: { b: 1 }\n', { 5: 2, 16: 8 }],
  ['two that end together, of which the inner is still open', '[1, [2', { 6: 4 }],
])('of %s each pair of brackets has its beginning by its end', (_, text, wanted) => {
  expect(startsIn(text)).toEqual(wanted);
});
