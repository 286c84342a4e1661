import { afterEach, expect, test, vi } from 'vitest';
import { Composer, Parser } from 'yaml';
import { tooDeepToParse } from '../../../src/documents/yaml/nesting.ts';
import { load, told } from '../load.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

const nested = (depth: number, open = '[', close = ']') => open.repeat(depth) + close.repeat(depth);
const startIn = (text: string) => tooDeepToParse([...new Parser().parse(text)])?.span.start;

test.each([
  ['lists in brackets', nested(257), 32],
  ['maps in braces', nested(257, '{a: ', '}'), 32 * 4],
  ['lists behind dashes', '- '.repeat(257), 32 * 2],
  ['keys of keys', '? '.repeat(257), 32 * 2],
  ['lists as keys', `? ${nested(257)}: 1`, 32],
  [
    'maps below each other',
    Array.from({ length: 257 }, (_, at) => `${' '.repeat(at)}a:\n`).join(''),
    (32 * 33) / 2 + 32 * 3,
  ],
  ['the second of two lists', `a: [1]\nb: ${nested(256)}`, 10 + 31],
  ['the second of two documents', `a: 1\n---\n${nested(257)}`, 9 + 32],
  ['what is never closed', '['.repeat(257), 32],
])('%s are found too deep to be parsed, where the thirty-third begins', (_, text, start) => {
  expect(startIn(text)).toBe(start);
});

test.each([
  ['one level less', nested(256)],
  ['many beside each other', `[${'[[1], {a: b}],'.repeat(300)}]`],
  ['brackets in a text', `a: "${'['.repeat(300)}"\nb: |\n  ${'['.repeat(300)}\n`],
  ['nothing', ''],
])('%s is not', (_, text) => {
  expect(startIn(text)).toBeUndefined();
});

test('the parser, which calls itself once a level, is not asked about them: it might end the whole program', () => {
  const compose = vi.spyOn(Composer.prototype, 'compose');
  const loaded = load(`%FOO\n---\n${nested(5000)}`);
  expect(compose).not.toHaveBeenCalled();
  expect(Object.keys(loaded)).toEqual(['source', 'diagnostics']);
  expect(told(loaded)).toEqual([
    '1:1-5 directive: a directive line (%) is not used here; leave the line out: documents are YAML 1.2',
    '3:33-34 depth: lists and maps are nested more than 32 deep; nest them less deep',
  ]);
});
