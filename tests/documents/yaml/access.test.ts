import { expect, test } from 'vitest';
import {
  childOf,
  entriesOf,
  flagAt,
  itemsOf,
  namesAt,
  readNamed,
  scalarOf,
  textAt,
  textOf,
  textsOf,
} from '../../../src/documents/yaml/access.ts';
import type { Node } from '../../../src/documents/yaml/node.ts';
import { load } from '../load.ts';

const TEXT =
  'name: A12\nhours: 0.0020\nnothing: ~\nyes: true\nno: false\nword: "true"\nlist: [a, ~, 05, [b]]\nmap: { c: 1 }\n';
const { root } = load(TEXT.replace('yes:', 'is:').replace('no:', 'not:'));
const at = (key: string): Node | undefined => childOf(root, key);

/** By the key of the document above, what a reader finds there. */
test.each([
  ['name', { text: 'A12', texts: ['A12'], entries: 0, items: 0, flag: false, isScalar: true }],
  ['hours', { text: '0.0020', texts: ['0.0020'], entries: 0, items: 0, flag: false, isScalar: true }],
  ['nothing', { text: undefined, texts: [], entries: 0, items: 0, flag: false, isScalar: false }],
  ['is', { text: 'true', texts: ['true'], entries: 0, items: 0, flag: true, isScalar: true }],
  ['not', { text: 'false', texts: ['false'], entries: 0, items: 0, flag: false, isScalar: true }],
  ['word', { text: 'true', texts: ['true'], entries: 0, items: 0, flag: false, isScalar: true }],
  ['list', { text: undefined, texts: ['a', '05'], entries: 0, items: 4, flag: false, isScalar: false }],
  ['map', { text: undefined, texts: [], entries: 1, items: 0, flag: false, isScalar: false }],
  ['none', { text: undefined, texts: [], entries: 0, items: 0, flag: false, isScalar: false }],
])('%s is read as it stands, and as nothing where it is of another kind', (key, wanted) => {
  const node = at(key);
  expect({
    text: textOf(node),
    texts: textsOf(node),
    entries: entriesOf(node).length,
    items: itemsOf(node).length,
    flag: flagAt(root, key),
    isScalar: scalarOf(node) !== undefined && scalarOf(node) === node,
  }).toEqual(wanted);
  expect(textAt(root, key)).toBe(wanted.text);
});

test('a list has its items and a map its entries, in the order of the file', () => {
  expect(entriesOf(root).map(({ key }) => key)).toEqual([
    'name',
    'hours',
    'nothing',
    'is',
    'not',
    'word',
    'list',
    'map',
  ]);
  expect(itemsOf(at('list')).map(textOf)).toEqual(['a', undefined, '05', undefined]);
  expect(childOf(at('list'), '0')).toBeUndefined();
});

test('a name has its place, alone or in a list', () => {
  const span = (word: string) => ({ start: TEXT.indexOf(word), end: TEXT.indexOf(word) + word.length });
  const { root: sound } = load('name: A12\nlist: [a, ~, b]\nmap: { c: 1 }\n');
  const starts = (key: string) =>
    namesAt(sound, key).map(({ name, span: { start, end } }) => [name, start, end]);
  expect(readNamed(at('name'))).toEqual({ name: 'A12', span: span('A12') });
  expect([readNamed(undefined), readNamed(at('nothing')), readNamed(at('list'))]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
  expect([starts('name'), starts('list'), starts('map'), starts('none')]).toEqual([
    [['A12', 6, 9]],
    [
      ['a', 17, 18],
      ['b', 23, 24],
    ],
    [],
    [],
  ]);
});
