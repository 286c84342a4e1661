import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTyped } from '../../../src/bench/record/typedReading.ts';
import { parseDecimal } from '../../../src/quantity/fraction.ts';
import { runs } from '../../propertyRuns.ts';

const expected = { reference: parseDecimal('3.2480'), decimals: 4, bandWidth: parseDecimal('0.0010') };
const LENGTH = { quantity: 'length', zero: undefined, expected, takesRanges: true } as const;
const DEVIATION = { ...LENGTH, zero: { setTo: '3.2500', counts: 'tenths' } } as const;

describe('a line at the bench', () => {
  it.each([
    ['3.2478', '3.2478', false],
    ['3.2480', '3.2480', false],
    ['+003.2478', '3.2478', false],
    ['.0025', '.0025', false],
    ['-0.0002', '-0.0002', false],
    ['3,2478', '3.2478', true],
    ['478', '3.2478', true],
    ['82.495mm', '82.495 mm', false],
    ['70 ft-lb', undefined, false],
    ['under 0.004', 'under 0.004', false],
    ['<0.004', 'under 0.004', false],
    ['over 0.006', 'over 0.006', false],
    ['>0.006', 'over 0.006', false],
    ['0.003-0.004', '0.003 to 0.004', false],
    ['go 0.017 no 0.018', '{ go: 0.017, no_go: 0.018 }', false],
    ['0.004 to 0.003', undefined, false],
    ['78', undefined, false],
    ['3.24.78', undefined, false],
    ['3.2478 3.2479', undefined, false],
    ['1e3', undefined, false],
    ['5.', undefined, false],
  ])('%s is taken as %s', (line, text, completed) => {
    const read = readTyped(line, LENGTH);
    expect(read.ok ? read.text : undefined).toBe(text);
    if (read.ok) expect(read.completed).toBe(completed);
  });

  it.each([
    ['+7', '+7'],
    ['05', '05'],
    ['-3', '-3'],
    ['478', '478'],
    ['3.2507 in', '3.2507 in'],
  ])('%s is a deviation of %s where the gauge was set', (line, text) => {
    expect(readTyped(line, DEVIATION)).toMatchObject({ ok: true, text });
  });

  it.each([
    ['pass', 'pass'],
    ['fail', 'fail'],
    ['not done', 'not done'],
    ['1', undefined],
    ['cracked', undefined],
  ])('of a test %s is taken as %s', (line, text) => {
    const read = readTyped(line, { ...LENGTH, quantity: 'pass or fail', expected: undefined });
    expect(read.ok ? read.text : undefined).toBe(text);
  });

  it('never throws and never makes a reading of what holds no digit', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 20 }), (line) => {
        const read = readTyped(line, LENGTH);
        if (read.ok) expect(line).toMatch(/\d/);
      }),
      runs(2000),
    );
  });
});
