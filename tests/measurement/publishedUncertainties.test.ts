import { describe, expect, test } from 'vitest';
import { halfGap, type Instrument } from '../../src/measurement/instrument.ts';
import { readingTerms } from '../../src/measurement/readingTerms.ts';
import { standardUncertainty, subtractValues } from '../../src/measurement/value.ts';
import { parseDecimal, toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, toBase, unitNamed } from '../../src/quantity/units.ts';

const inch = (text: string) => toBase(parseDecimal(text), unitNamed('in'));
const um = (text: string) => toBase(parseDecimal(text), unitNamed('um'));

describe('the marks of a strip', () => {
  const marks = ['0.002', '0.003', '0.004', '0.006'].map(inch);
  test.each([
    ['0.0025', '0.00050', 'between two marks their gap'],
    ['0.0050', '0.00100', 'between two marks farther apart'],
    ['0.0030', '0.00050', 'on a mark between like gaps'],
    ['0.0040', '0.00100', 'on a mark the wider of its two gaps'],
    ['0.0020', '0.00050', 'on the first mark'],
    ['0.0060', '0.00100', 'on the last mark'],
    ['0.0010', '0.00050', 'below the marks the first gap'],
    ['0.0090', '0.00100', 'beyond the marks the last gap'],
  ])('a reading of %s may be off by %s in: %s', (reading, half) => {
    expect(toDecimal(fromBase(halfGap(marks, inch(reading)), unitNamed('in')), 5)).toBe(half);
  });
});

describe('the error terms of a reading', () => {
  const micrometer: Instrument = {
    id: 'mic',
    type: 'micrometer',
    maxError: { amount: um('4') },
    resolution: inch('0.0001'),
    assumed: false,
  };
  const terms = (instrument: Instrument, id = 'a', setter?: Instrument) => ({
    amount: inch('3.2478'),
    terms: readingTerms(instrument, { amount: inch('3.2478'), id }, setter),
  });
  const uOf = (instrument: Instrument): number => standardUncertainty(terms(instrument)) / 1e4;

  // JCGM 100:2008, 4.3.7 and (from memory) F.2.2.1, as rectangular distributions.
  test('an error limit of 4 µm is 2.31 µm, a resolution of 0.0001 in is 0.73 µm', () => {
    const { resolution: _, ...limit } = micrometer;
    const { maxError: __, ...step } = micrometer;
    expect(uOf(limit)).toBeCloseTo(2.31, 2);
    expect(uOf(step)).toBeCloseTo(0.73, 2);
  });

  // JCGM 100:2008 H.1.3.1: 0.075 µm at k = 3 is 25 nm.
  test('a certificate of 0.075 µm at k = 3 is 25 nm', () => {
    const { maxError: _, resolution: __, ...bare } = micrometer;
    expect(uOf({ ...bare, calibration: { uncertainty: um('0.075'), k: 3 } })).toBeCloseTo(0.025, 12);
  });

  test('4 % of a wrench is 2.3 % of its reading as a standard uncertainty', () => {
    const { maxError: _, resolution: __, ...bare } = micrometer;
    const wrench: Instrument = { ...bare, type: 'torque wrench', maxError: { share: parseDecimal('0.04') } };
    const read = readingTerms(wrench, { amount: parseDecimal('100'), id: 'a' });
    expect([...read.values()][0]?.u).toBeCloseTo(2.309, 3);
  });

  // Two micrometers of 4 µm: 3.266 µm, of which the one micrometer's part cancels where it is the same.
  test('two readings by two micrometers differ to 3.27 µm, by one micrometer only to their resolutions', () => {
    const { resolution: _, ...limit } = micrometer;
    const apart = subtractValues(terms(limit), terms({ ...limit, id: 'other' }, 'b'));
    expect(standardUncertainty(apart) / 1e4).toBeCloseTo(3.266, 3);
    const alike = subtractValues(terms(micrometer), terms(micrometer, 'b'));
    expect(standardUncertainty(alike) / 1e4).toBeCloseTo((2.54 / Math.sqrt(12)) * Math.SQRT2, 9);
  });

  test("a gauge set with a micrometer carries the micrometer's error, and loses it against the micrometer's readings", () => {
    const gauge: Instrument = { id: 'gauge', type: 'bore gauge', repeatability: um('0.5'), assumed: false };
    const bore = terms(gauge, 'bore', micrometer);
    // The micrometer is read once more, when the gauge is zeroed.
    const reading = 2.54 / Math.sqrt(12);
    expect(standardUncertainty(bore) / 1e4).toBeCloseTo(Math.hypot(4 / Math.sqrt(3), 0.5, reading), 9);
    const clearance = subtractValues(bore, terms(micrometer, 'journal'));
    expect(standardUncertainty(clearance) / 1e4).toBeCloseTo(Math.hypot(0.5, reading, reading), 9);
  });

  test('a reading given as a range has half its width, whatever the marks', () => {
    const strip: Instrument = {
      id: 's',
      type: 'gauging strip',
      marks: ['0.002', '0.006'].map(inch),
      assumed: false,
    };
    const read = readingTerms(strip, {
      amount: inch('0.0035'),
      id: 'a',
      range: { below: inch('0.0005'), above: inch('0.0005') },
    });
    expect([...read.keys()]).toEqual(['range read of s at a']);
  });
});
