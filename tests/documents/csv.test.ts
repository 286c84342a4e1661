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
    const [, second] = parseCsv('"a\nb",c\n\n1, 2\n', ',').rows;
    expect(second).toEqual([
      { text: '1', line: 4, column: 1, row: 3 },
      { text: '2', line: 4, column: 3, row: 3 },
    ]);
  });

  it('tells of each cell where it begins, whatever stands before it', () => {
    const cell = fc.oneof(
      fc.string({ unit: fc.constantFrom('a', '1', '.', 'µ', '😀'), maxLength: 3 }),
      fc
        .string({ unit: fc.constantFrom('a', '"', ';', '\n', '\r\n', ' ', 'µ', '😀'), maxLength: 5 })
        .map((text) => `"${text.replaceAll('"', '""')}"`),
    );
    const rows = fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(rows, fc.constantFrom('\n', '\r\n'), fc.boolean(), (cells, lineEnd, marked) => {
        const text = cells.map((row) => row.join(';')).join(lineEnd);
        const starts = cells.flatMap((row, r) =>
          row.map((_, c) =>
            [...cells.slice(0, r).map((each) => each.join(';')), [...row.slice(0, c), ''].join(';')].join(
              lineEnd,
            ),
          ),
        );
        const expected = starts.map((before) => ({
          line: before.split('\n').length,
          column: before.length - before.lastIndexOf('\n'),
        }));
        const { rows: found } = parseCsv(`${marked ? '\uFEFF' : ''}${text}`, ';');
        const places = found.flat().map(({ line, column }) => ({ line, column }));
        expect(expected).toEqual(expect.arrayContaining(places));
        const kept = cells.filter((row) => row.some((each) => each !== '' && each !== '""'));
        expect(places).toHaveLength(kept.flat().length);
      }),
    );
  });

  it.each<[text: string, message: string, line: number, column: number]>([
    ['a;b\n1;2\n3;"never\n4;5\n', 'the quotes that begin here never end', 3, 3],
    ['a;b\n1;"x\ny"\n"never;1\n', 'the quotes that begin here never end', 4, 1],
    ['"never', 'the quotes that begin here never end', 1, 1],
    ['a;b\r\n1;"x"y\r\n', 'text after the closing quotes', 2, 3],
    ['a;b\r\n1;"x" y\r\n', 'text after the closing quotes', 2, 3],
    ['a;b\nµ;1/2"\n', 'quotes stand within a cell that does not begin with them', 2, 3],
  ])('is refused where it breaks off: %j', (text, message, line, column) => {
    expect(parseCsv(text, ';')).toEqual({ rows: [], problems: [{ message, line, column }] });
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
