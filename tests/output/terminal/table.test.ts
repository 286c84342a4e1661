import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Line, line, sourceOfLine } from '../../../src/output/escape/line.ts';
import { layManyRows } from '../../../src/output/terminal/manyRows.ts';
import { paintWith } from '../../../src/output/terminal/paint.ts';
import { type Column, cell, fitting, layTable } from '../../../src/output/terminal/table.ts';
import { widthOf } from '../../../src/output/terminal/width.ts';
import { runs } from '../../propertyRuns.ts';

const COLUMNS: readonly Column[] = [{ align: 'left' }, { align: 'right' }, { align: 'left' }];
const red = (text: Line): Line => line`\u001b[31m${text}\u001b[39m`;

const laid = (...of: Parameters<typeof layTable>): readonly string[] => layTable(...of).map(sourceOfLine);

describe('a table', () => {
  it('sets columns two spaces apart, numbers to the right, and ends no line with spaces', () => {
    const rows = [
      [cell('1 front'), cell('0.0025'), cell('ok')],
      [cell('5'), cell('0.0045 to 0.0051'), cell('')],
    ];
    expect(laid(rows, COLUMNS)).toEqual(['  1 front            0.0025  ok', '  5        0.0045 to 0.0051']);
  });

  it('leaves out a column that is empty in every row', () => {
    const rows = [
      [cell('1'), cell(''), cell('ok')],
      [cell('2'), cell(''), cell('out')],
    ];
    expect(laid(rows, COLUMNS)).toEqual(['  1  ok', '  2  out']);
  });

  it('takes a row that is shorter than the others', () => {
    expect(laid([[cell('1')], [cell('2'), cell('0.1'), cell('ok')]], COLUMNS)).toEqual([
      '  1',
      '  2  0.1  ok',
    ]);
  });

  it('stands the same with colours and without', () => {
    const lay = (paint: (text: Line) => Line): readonly string[] =>
      laid(
        [
          [cell(paint('ok')), cell('1'), cell('x')],
          [cell(paint('out')), cell('22'), cell('y')],
        ],
        COLUMNS,
      );
    const plain = lay((text) => text);
    expect(plain).toEqual(['  ok    1  x', '  out  22  y']);
    expect(lay(red).map((line) => line.replace(/\u001b\[\d+m/g, ''))).toEqual(plain);
    expect(lay(red)).not.toEqual(plain);
  });

  it('leaves out a column of painted nothing', () => {
    const { faint } = paintWith(1);
    expect(laid([[cell('1'), cell(faint('')), cell('ok')]], COLUMNS)).toEqual(['  1  ok']);
  });

  it('is as wide as what is printed, where a name holds what cannot be seen', () => {
    const rows = [
      [cell('a\u001b'), cell('1')],
      [cell('b'), cell('2')],
    ];
    expect(laid(rows, COLUMNS)).toEqual(['  a\\u{1b}  1', '  b        2']);
  });

  it.each([
    ['plain text', 'loose by 7', 10],
    ['line drawing', '├──●──┤', 7],
    ['an accent put on by a second character', 'e\u0301', 1],
    ['a character two columns wide', '軸', 2],
    ['nothing', '', 0],
  ])('counts columns of the terminal, not characters: %s', (_, text, width) => {
    expect(widthOf(text)).toBe(width);
  });

  it.each([
    [20, 'wide, wide'],
    [9, 'middle'],
    [2, 'small'],
  ])('takes the first shape that fits in %i columns, or the last', (width, expected) => {
    const shapes = ['wide, wide', 'middle', 'small'];
    const [found] = fitting(width, shapes, (shape) => [red(shape)]);
    expect(found).toEqual(red(expected));
  });
});

describe('the table of a check', () => {
  const text = fc.oneof(
    fc.string({ maxLength: 8 }),
    fc.constantFrom(
      '',
      'ok',
      '0.0045 to 0.0051',
      '├──●──┤',
      '−0.0003 ±0.0002',
      '日本',
      'a\nb',
      '::error::',
      '\u202e',
    ),
  );
  const cells = fc.tuple(text, fc.boolean()).map(([of, isRed]) => cell(isRed ? red(of) : of));

  it('is line for line what the library lays', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(cells, { maxLength: 4 }), { maxLength: 6 }),
        fc.array(fc.constantFrom<Column>({ align: 'left' }, { align: 'right' }), {
          minLength: 1,
          maxLength: 4,
        }),
        fc.integer({ min: 0, max: 4 }),
        (rows, columns, indent) => {
          expect(layManyRows(rows, columns, indent).map(sourceOfLine)).toEqual(laid(rows, columns, indent));
        },
      ),
      runs(1000),
    );
  });
});
