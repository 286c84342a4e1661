import { describe, expect, it } from 'vitest';
import { writtenCsv } from '../../../src/output/escape/csv.ts';

describe('an order list for a spreadsheet', () => {
  it.each([
    ['plain', 'ring sets', 'ring sets'],
    ['with a comma', 'A, B', '"A, B"'],
    ['with quotes', '0.010" under', '"0.010"" under"'],
    ['that begins like a formula', '=1+1', "'=1+1"],
    ['that begins with a sign', '@SUM(A1)', "'@SUM(A1)"],
    ['that begins with a minus', '-2', "'-2"],
    ['that begins like a formula and has a comma', '+A,B', '"\'+A,B"'],
  ])('writes text %s', (_, text, written) => {
    expect(writtenCsv([[text, 3]])).toBe(`${written},3\r\n`);
  });
});
