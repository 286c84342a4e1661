import { describe, expect, test } from 'vitest';
import { slipsOf } from '../../../src/measurement/slips/slips.ts';
import { amountOf, type WrittenNumber } from '../../../src/measurement/slips/writtenNumber.ts';
import { equals, fraction, parseDecimal, ZERO } from '../../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../../src/quantity/units.ts';

const number = (digits: string, unit = 'in'): WrittenNumber => ({
  digits,
  unit: unitNamed(unit).factor,
  start: ZERO,
});
const texts = (of: WrittenNumber, words: RegExp): readonly string[] =>
  slipsOf(of)
    .filter((slip) => words.test(slip.words))
    .map(({ written }) => written);

describe('what a number may have been meant to be', () => {
  test('each pair of neighbouring digits that differ, across the decimal point too', () => {
    expect(texts(number('3.2447'), /swapped/)).toEqual(['2.3447', '3.4247', '3.2474']);
  });

  test('the point one or two places either way', () => {
    expect(texts(number('3.2478'), /point/)).toEqual(['0.032478', '0.32478', '32.478', '324.78']);
    expect(texts(number('-220'), /point/)).toEqual(['-2.20', '-22', '-2200', '-22000']);
    expect(texts(number('.0025'), /point/)).toEqual(['0.000025', '0.00025', '0.025', '0.25']);
  });

  test('a turn and a frame of an inch micrometer, of a metric one', () => {
    expect(texts(number('3.2478'), /turn/)).toEqual(['3.2728', '3.2228']);
    expect(texts(number('3.2478'), /inch out/)).toEqual(['4.2478', '2.2478']);
    expect(texts(number('82.495', 'mm'), /turn/)).toEqual(['82.995', '81.995']);
    expect(texts(number('82.495', 'mm'), /next/)).toEqual(['107.495', '57.495']);
    expect(texts(number('2500', 'um'), /turn/)).toEqual(['3000', '2000']);
  });

  test('the other unit, but not of a deviation from a master', () => {
    expect(texts(number('82.495'), /written as/)).toEqual(['82.495 mm']);
    expect(texts(number('3.2478', 'mm'), /written as/)).toEqual(['3.2478 in']);
    expect(texts({ ...number('7'), start: fraction(1) }, /written as/)).toEqual([]);
  });

  test.each([
    ['swapped', '3.2847', '3.2487'],
    ['point', '32.478', '3.2478'],
    ['turn', '3.2728', '3.2478'],
    ['inch out', '4.2478', '3.2478'],
  ])('%s: %s was %s, in amount as in writing', (words, wrong, right) => {
    const found = slipsOf(number(wrong)).find((slip) => slip.words.includes(words) && slip.written === right);
    expect(found && equals(found.intended, toBase(parseDecimal(right), unitNamed('in')))).toBe(true);
    expect(equals(amountOf(number(right)), toBase(parseDecimal(right), unitNamed('in')))).toBe(true);
  });
});
