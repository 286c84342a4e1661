import { describe, expect, it } from 'vitest';
import { type Column, cell, fitting, layTable, painted } from '../../../src/output/terminal/table.ts';
import { widthOf } from '../../../src/output/terminal/width.ts';

const COLUMNS: readonly Column[] = [{ align: 'left' }, { align: 'right' }, { align: 'left' }];
const red = (text: string): string => `\u001b[31m${text}\u001b[39m`;

describe('a table', () => {
  it('sets columns two spaces apart, numbers to the right, and ends no line with spaces', () => {
    const rows = [
      [cell('1 front'), cell('0.0025'), cell('ok')],
      [cell('5'), cell('0.0045 to 0.0051'), cell('')],
    ];
    expect(layTable(rows, COLUMNS)).toEqual([
      '  1 front            0.0025  ok',
      '  5        0.0045 to 0.0051',
    ]);
  });

  it('leaves out a column that is empty in every row', () => {
    const rows = [
      [cell('1'), cell(''), cell('ok')],
      [cell('2'), cell(''), cell('out')],
    ];
    expect(layTable(rows, COLUMNS)).toEqual(['  1  ok', '  2  out']);
  });

  it('takes a row that is shorter than the others', () => {
    expect(layTable([[cell('1')], [cell('2'), cell('0.1'), cell('ok')]], COLUMNS)).toEqual([
      '  1',
      '  2  0.1  ok',
    ]);
  });

  it('stands the same with colours and without', () => {
    const lay = (paint: (text: string) => string): readonly string[] =>
      layTable(
        [
          [painted('ok', paint), cell('1'), cell('x')],
          [painted('out', paint), cell('22'), cell('y')],
        ],
        COLUMNS,
      );
    const plain = lay((text) => text);
    expect(plain).toEqual(['  ok    1  x', '  out  22  y']);
    expect(lay(red).map((line) => line.replace(/\u001b\[\d+m/g, ''))).toEqual(plain);
    expect(lay(red)).not.toEqual(plain);
  });

  it('paints nothing where there is nothing', () => {
    expect(painted('', red)).toEqual({ text: '', width: 0 });
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
    expect(fitting(width, shapes, (shape) => [red(shape)])).toEqual([red(expected)]);
  });
});
