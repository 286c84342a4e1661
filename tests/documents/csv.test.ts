import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCsv } from '../../src/documents/csv.ts';

const texts = (text: string, delimiter = ','): readonly (readonly string[])[] =>
  parseCsv(text, delimiter).rows.map((row) => row.map((cell) => cell.text));

describe('the text of a spreadsheet', () => {
  it.each<[string, string, string, string[][]]>([
    [
      'plain cells',
      'a,b\n1,2\n',
      ',',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
    ['a last line without an end', 'a\n1', ',', [['a'], ['1']]],
    [
      'line ends of another system',
      'a;b\r\n1;2\r\n',
      ';',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
    ['cells in quotes', '"a ""b""","c,d"\n', ',', [['a "b"', 'c,d']]],
    ['a line end within quotes', '"a\nb",c\n', ',', [['a\nb', 'c']]],
    [
      'empty rows and empty cells',
      'a,b\n\n,\n1,\n',
      ',',
      [
        ['a', 'b'],
        ['1', ''],
      ],
    ],
    ['a byte order mark', '\uFEFFa\tb\n', '\t', [['a', 'b']]],
  ])('may have %s', (_, text, delimiter, expected) => {
    expect(texts(text, delimiter)).toEqual(expected);
    expect(parseCsv(text, delimiter).problems).toEqual([]);
  });

  it('tells of each cell in which line and column it begins, behind a line end in quotes too', () => {
    const [, second] = parseCsv('"a\nb",c\n1, 2\n', ',').rows;
    expect(second).toEqual([
      { text: '1', line: 3, column: 1 },
      { text: '2', line: 3, column: 3 },
    ]);
  });

  it('comes back cell by cell as it was written, whatever the cells hold', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '"', ',', '\n', '\r', ' ', '1', 'µ') });
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { maxLength: 5 }), (rows) => {
        const written = rows
          .map((row) => row.map((each) => `"${each.replaceAll('"', '""')}"`).join(','))
          .join('\n');
        const { rows: found, problems } = parseCsv(written, ',');
        expect(problems).toEqual([]);
        expect(found.map((row) => row.map(({ text }) => text))).toEqual(
          rows.filter((row) => row.some((each) => each !== '')),
        );
      }),
    );
  });
});
