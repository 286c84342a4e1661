import { describe, expect, test } from 'vitest';
import { likelierOnStrip, type ReadFrom, slipsOf } from '../../../src/measurement/slips/slips.ts';
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

const listed = (of: WrittenNumber, from: ReadFrom = {}): readonly string[] =>
  slipsOf(of, from).map(({ words, written }) => `${words}: ${written}`);
const moved = (...all: readonly string[]) => all.map((each) => `the decimal point moved: ${each}`);
const swapped = (...all: readonly string[]) => all.map((each) => `two digits swapped: ${each}`);

describe('all that one number may have been meant to be, in the order in which it is thought of', () => {
  test('a diameter in inches', () => {
    expect(listed(number('3.2478'), { isDiameter: true })).toEqual([
      ...moved('0.032478', '0.32478', '32.478', '324.78'),
      ...swapped('2.3478', '3.4278', '3.2748', '3.2487'),
      '25 thousandths out, one turn of a micrometer: 3.2728',
      '25 thousandths out, one turn of a micrometer: 3.2228',
      'one inch out: 4.2478',
      'one inch out: 2.2478',
      'millimetres written as inches: 3.2478 mm',
      'a radius for a diameter: 6.4956',
    ]);
  });

  test('a number of millimetres below zero', () => {
    expect(listed(number('-82.495', 'mm'))).toEqual([
      ...moved('-0.82495', '-8.2495', '-824.95', '-8249.5'),
      ...swapped('-28.495', '-84.295', '-82.945', '-82.459'),
      '0.5 mm out, one turn of a micrometer: -81.995',
      '0.5 mm out, one turn of a micrometer: -82.995',
      '25 mm out, the next micrometer of a set: -57.495',
      '25 mm out, the next micrometer of a set: -107.495',
      'inches written as millimetres: -82.495 in',
      'the sign: 82.495',
    ]);
  });

  test('a deviation from a master, of which no unit, no whole number and no radius is thought', () => {
    expect(listed({ ...number('+5.0', 'mm'), start: fraction(1) }, { isDiameter: true })).toEqual([
      ...moved('+0.050', '+0.50', '+50', '+500'),
      ...swapped('+0.5'),
      '0.5 mm out, one turn of a micrometer: 5.5',
      '0.5 mm out, one turn of a micrometer: 4.5',
      '25 mm out, the next micrometer of a set: 30.0',
      '25 mm out, the next micrometer of a set: -20.0',
      'the sign: -5.0',
    ]);
    expect(texts({ ...number('7'), start: fraction(1) }, /whole number/)).toEqual([]);
  });

  test('what was read from a dial is a turn of its hand out', () => {
    expect(listed(number('0.7'), { instrument: 'dial indicator' })).toEqual([
      ...moved('0.007', '0.07', '7', '70'),
      ...swapped('7.0'),
      '100 thousandths out, one turn of the dial: 0.8',
      '100 thousandths out, one turn of the dial: 0.6',
      'millimetres written as inches: 0.7 mm',
    ]);
    expect(listed(number('7', 'mm'), { instrument: 'dial indicator' })).toEqual([
      'hundredths written as a whole number: 0.07',
      'thousandths written as a whole number: 0.007',
      ...moved('0.07', '0.7', '70', '700'),
      '1 mm out, one turn of the dial: 8',
      '1 mm out, one turn of the dial: 6',
      'inches written as millimetres: 7 in',
    ]);
  });

  test('what was read from a strip may have been read on its other scale', () => {
    expect(listed(number('0.051', 'mm'), { instrument: 'gauging strip' })).toEqual([
      ...moved('0.00051', '0.0051', '0.51', '5.1'),
      ...swapped('0.501', '0.015'),
      "read on the strip's inch scale: 0.051 in",
    ]);
    expect(listed(number('0.002'), { instrument: 'gauging strip' }).at(-1)).toBe(
      "read on the strip's millimetre scale: 0.002 mm",
    );
  });

  test.each(['caliper', 'feeler gauge'] as const)('a %s has no thimble', (instrument) => {
    expect(listed(number('0.70'), { instrument }).filter((each) => / out/.test(each))).toEqual([]);
  });

  test.each([
    ['7', 'in', ['0.007']],
    ['120', 'in', ['0.120']],
    ['-12', 'mm', ['-0.12', '-0.012']],
    ['1000', 'in', []],
    ['012', 'in', []],
    ['7.0', 'in', []],
    ['7', 'thou', []],
    ['7', 'um', []],
  ])('%s %s may be called out in its hundredths or thousandths: %o', (digits, unit, expected) => {
    expect(texts(number(digits, unit), /whole number/)).toEqual(expected);
  });

  test.each([
    ['324', []],
    ['3247', ['3.247']],
    ['32478', ['3.2478', '32.478']],
    ['-324785', ['-3.24785', '-32.4785', '-324.785']],
    ['32478.5', []],
  ])('%s without its point may have been %o', (digits, expected) => {
    expect(texts(number(digits), /point left out/)).toEqual(expected);
  });

  test.each([
    ['in', 'one inch out'],
    ['thou', 'one inch out'],
    ['mm', '25 mm out, the next micrometer of a set'],
    ['um', '25 mm out, the next micrometer of a set'],
  ])('%s is read with micrometers of its own system', (unit, words) => {
    expect(slipsOf(number('9999', unit)).map((slip) => slip.words)).toContain(words);
  });
});

describe('a slip that lies on a mark of the strip is the likelier one', () => {
  const inch = (digits: string) => toBase(parseDecimal(digits), unitNamed('in'));
  const slip = (digits: string) => ({ words: '', written: digits, intended: inch(digits) });
  const slips = ['0.00201', '0.0025', '0.0038'].map(slip);
  const likelier = (...marks: readonly string[]) =>
    likelierOnStrip(slips, { marks: marks.map(inch) }).map(({ written }) => written);

  test.each([
    ['beside a mark, by the rounding of the other scale', ['0.002'], ['0.00201']],
    ['beside any of them', ['0.002', '0.0025'], ['0.00201', '0.0025']],
    ['farther off than that', ['0.0039'], ['0.0038']],
    ['beside none', ['0.001', '0.004'], ['0.00201', '0.0025', '0.0038']],
  ])('%s', (_, marks, expected) => {
    expect(likelier(...marks)).toEqual(expected);
  });

  test('without marks all are alike', () => expect(likelierOnStrip(slips, {})).toEqual(slips));
});
