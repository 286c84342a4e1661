import { expect, test } from 'vitest';
import { sourceText } from '../../../src/documents/yaml/sourceText.ts';

const at = (text: string, start: number, end = start) => {
  const { line, column, endLine, endColumn } = sourceText('a.yaml', text).place({ start, end });
  return [line, column, endLine, endColumn];
};

test.each([
  ['the first character', 'abc', 0, 1, [1, 1, 1, 2]],
  ['the second line', 'a\nbc', 2, 4, [2, 1, 2, 3]],
  ['a line end of two characters', 'a\r\nbc', 3, 4, [2, 1, 2, 2]],
  ['a byte order mark takes no column', '\ufeffabc', 1, 3, [1, 1, 1, 3]],
  ['nor does it on other lines', '\ufeffa\nb', 3, 4, [2, 1, 2, 2]],
  ['a first line that is empty', '\nab', 1, 2, [2, 1, 2, 2]],
  ['a last line that is empty', 'ab\n', 3, 3, [2, 1, 2, 1]],
  ['a line end belongs to its line', 'ab\ncd', 2, 3, [1, 3, 2, 1]],
  ['before the text', 'ab', -3, 1, [1, 1, 1, 2]],
  ['inside a byte order mark', '\ufeffab', 0, 2, [1, 1, 1, 2]],
  ['over lines', 'ab\ncd', 1, 4, [1, 2, 2, 2]],
  ['past the end', 'ab', 9, 12, [1, 3, 1, 3]],
  ['an empty file', '', 0, 0, [1, 1, 1, 1]],
  ['an end before its start', 'abc', 2, 1, [1, 3, 1, 3]],
])('places: %s', (_what, text, start, end, expected) => {
  expect(at(text, start, end)).toEqual(expected);
});

test('columns count UTF-16 units, as editors do', () => {
  expect(at('µ日🔧x', 4, 5)).toEqual([1, 5, 1, 6]);
});

test('each line of many is found by its first and its last character', () => {
  const lines = Array.from({ length: 37 }, (_, index) => 'x'.repeat((index * 7) % 5));
  const text = lines.join('\n');
  let start = 0;
  for (const [index, line] of lines.entries()) {
    expect(at(text, start, start + line.length)).toEqual([index + 1, 1, index + 1, line.length + 1]);
    start += line.length + 1;
  }
});

test('a text is kept as it stands, with its path', () => {
  expect(sourceText('a.yaml', '\ufeffa\r\n')).toMatchObject({ path: 'a.yaml', text: '\ufeffa\r\n' });
  expect(sourceText('a.yaml', 'abc').place({ start: 1, end: 2 })).toEqual({
    path: 'a.yaml',
    line: 1,
    column: 2,
    endLine: 1,
    endColumn: 3,
  });
});
