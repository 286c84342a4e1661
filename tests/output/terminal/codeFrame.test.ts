import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import type { Place } from '../../../src/diagnostic/place.ts';
import { codeFrame } from '../../../src/output/terminal/codeFrame.ts';
import { anyCharacter } from '../../anyCharacter.ts';
import { runs } from '../../propertyRuns.ts';

const place = (line: number, column: number, endLine: number, endColumn: number): Place => ({
  path: 'a.yaml',
  line,
  column,
  endLine,
  endColumn,
});

const frame = (text: string, where: Place, width = 80) => codeFrame(text, where, { width });

describe('the user sees the line as written, and carets under what is meant', () => {
  test.each([
    [
      'a value',
      'a: 1\n  value: 4,0010\n',
      place(2, 10, 2, 16),
      [' 2 |   value: 4,0010', '   |          ^^^^^^'],
    ],
    ['with CRLF line ends', 'a: 1\r\nb: 05\r\n', place(2, 4, 2, 6), [' 2 | b: 05', '   |    ^^']],
    ['behind a byte order mark', '\ufeffa: 05\n', place(1, 4, 1, 6), [' 1 | a: 05', '   |    ^^']],
    ['behind wide characters', '日本: 05\n', place(1, 5, 1, 7), [' 1 | 日本: 05', '   |       ^^']],
    ['on wide characters', 'a: 日本\n', place(1, 4, 1, 6), [' 1 | a: 日本', '   |    ^^^^']],
    ['behind an emoji', '🔧: 05\n', place(1, 5, 1, 7), [' 1 | 🔧: 05', '   |     ^^']],
    ['behind an accent of its own', 'e\u0301: 05\n', place(1, 5, 1, 7), [' 1 | e\u0301: 05', '   |    ^^']],
    ['behind tabs', 'a:\t[\t05]\n', place(1, 6, 1, 8), [' 1 | a:  [   05]', '   |         ^^']],
    ['a control character', 'a: \x1b[31m\n', place(1, 4, 1, 5), [' 1 | a: \\u{1b}[31m', '   |    ^^^^^^']],
    [
      'behind a hidden character',
      '\u202ea: 05\n',
      place(1, 5, 1, 7),
      [' 1 | \\u{202e}a: 05', '   |            ^^'],
    ],
    ['without extent', 'a: \n', place(1, 4, 1, 4), [' 1 | a:', '   |    ^']],
    ['over lines', 'a: [1,\n 2]\n', place(1, 4, 2, 4), [' 1 | a: [1,', '   |    ^^^']],
    ['past the end of the line', 'a: 1\n', place(1, 9, 1, 12), [' 1 | a: 1', '   |     ^']],
    ['on the last line without a line end', 'a: 1\nb', place(2, 1, 2, 2), [' 2 | b', '   | ^']],
    [
      'with a long number',
      `${'\n'.repeat(119)}a: 05`,
      place(120, 4, 120, 6),
      [' 120 | a: 05', '     |    ^^'],
    ],
  ])('%s', (_what, text, where, expected) => {
    expect(frame(text, where)).toEqual(expected);
  });

  test.each([
    ['an empty file', '', place(1, 1, 1, 1)],
    ['a line that is not there', 'a: 1\n', place(7, 1, 7, 2)],
  ])('%s has nothing to show', (_what, text, where) => {
    expect(codeFrame(text, where, { width: 80 })).toEqual([]);
  });
});

describe('a long line is cut around the carets', () => {
  const long = `${'abcdefghij'.repeat(30)}`;
  test.each([
    ['at its start', place(1, 3, 1, 6), [' 1 | abcdefghijabcdefghijabcdefghijabcd…', '   |   ^^^']],
    [
      'in its middle',
      place(1, 151, 1, 154),
      [' 1 | …jabcdefghijabcdefghijabcdefghijab…', '   |             ^^^'],
    ],
    ['at its end', place(1, 299, 1, 301), [' 1 | …hijabcdefghij', '   |             ^^']],
    [
      'longer than the room',
      place(1, 11, 1, 200),
      [' 1 | abcdefghijabcdefghijabcdefghijabcd…', `   |           ${'^'.repeat(24)}`],
    ],
  ])('%s', (_where, where, expected) => {
    const [line = '', carets = ''] = frame(long, where, 40);
    expect(stringWidth(line)).toBeLessThanOrEqual(40);
    expect(stringWidth(carets)).toBeLessThanOrEqual(40);
    const marked = line.slice(carets.indexOf('^'), carets.lastIndexOf('^') + 1);
    expect(marked).toBe(long.slice(where.column - 1, where.column - 1 + marked.length));
    expect(frame(long, where, 40)).toEqual(expected);
  });

  test('a quarter of a million characters take no time', () => {
    const start = process.cpuUsage();
    frame('日'.repeat(260_000), place(1, 130_000, 1, 260_000), 120);
    expect(process.cpuUsage(start).user / 1e6).toBeLessThan(0.5);
  });
});

test('whatever the text, the width and the place, a frame is two lines that fit', () => {
  const at = fc.integer({ min: 1, max: 60 });
  const text = fc.string({ unit: anyCharacter, maxLength: 120 });
  const property = fc.property(
    text,
    at,
    at,
    fc.integer({ min: 30, max: 120 }),
    (any, column, length, width) => {
      const lines = frame(any, place(1, column, 1, column + length), width);
      if (any === '') return;
      expect(lines).toHaveLength(2);
      for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(width);
      expect(lines[1]).toMatch(/\^/);
    },
  );
  fc.assert(property, runs(2000));
});
