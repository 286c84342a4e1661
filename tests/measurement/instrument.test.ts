import { describe, expect, it } from 'vitest';
import {
  anInstrument,
  anUnnamed,
  BY_EYE,
  halfGap,
  INSTRUMENT_TYPES,
  type Instrument,
  isBare,
  isWithoutSteps,
  MEASURED_WITH,
} from '../../src/measurement/instrument.ts';
import { readingTerms } from '../../src/measurement/readingTerms.ts';
import { equals, fraction, parseDecimal } from '../../src/quantity/fraction.ts';

const MIC: Instrument = { id: 'mic', type: 'micrometer', assumed: false };
const READING = { amount: fraction(1000), id: 's.yaml#/readings/0/at/1' };

const termsOf = (instrument: Partial<Instrument>, reading = {}, setter?: Instrument) =>
  Object.fromEntries(
    [...readingTerms({ ...MIC, ...instrument }, { ...READING, ...reading }, setter)].map(
      ([source, { u }]) => [source, u],
    ),
  );

describe('the sources of error of one reading', () => {
  it('the largest error is rectangular, a/√3, and the instrument’s own (JCGM 100:2008, 4.3.7)', () => {
    expect(termsOf({ maxError: { amount: fraction(30) } })).toEqual({
      'largest error of mic': 30 / Math.sqrt(3),
    });
  });

  it('the resolution is a rectangle of its width, r/√12, and the reading’s', () => {
    const found = termsOf({ resolution: fraction(12) });
    expect(Object.keys(found)).toEqual(['resolution of mic at s.yaml#/readings/0/at/1']);
    expect(Object.values(found)[0]).toBeCloseTo(12 / Math.sqrt(12), 12);
  });

  it('the repeatability is one standard deviation, the calibration U/k', () => {
    expect(termsOf({ repeatability: fraction(5), calibration: { uncertainty: fraction(8), k: 2 } })).toEqual({
      'calibration of mic': 4,
      'repeatability of mic at s.yaml#/readings/0/at/1': 5,
    });
  });

  it('all that is stated adds up', () => {
    const all = termsOf({
      maxError: { amount: fraction(3) },
      calibration: { uncertainty: fraction(2), k: 2 },
      resolution: fraction(1),
      repeatability: fraction(1),
    });
    expect(Object.keys(all)).toHaveLength(4);
  });

  it('a percentage is of the reading, whatever its sign', () => {
    const share = { maxError: { share: parseDecimal('0.04') } };
    expect(termsOf(share)['largest error of mic']).toBeCloseTo(40 / Math.sqrt(3), 12);
    expect(termsOf(share, { amount: fraction(-1000) })['largest error of mic']).toBeCloseTo(
      40 / Math.sqrt(3),
      12,
    );
  });

  it('nothing stated is no error', () => expect(termsOf({})).toEqual({}));

  it('a gauge brings the errors of what it was set with, under the setter’s name', () => {
    const setter: Instrument = {
      id: 'master',
      type: 'setting master',
      assumed: false,
      maxError: { amount: fraction(9) },
      calibration: { uncertainty: fraction(6), k: 2 },
      resolution: fraction(99),
    };
    const found = termsOf({ maxError: { amount: fraction(3) } }, {}, setter);
    expect(Object.keys(found).sort()).toEqual([
      'calibration of master',
      'largest error of master',
      'largest error of mic',
    ]);
  });
});

const MARKS = ['2', '3', '4', '6'].map((each) => parseDecimal(each));

describe('a strip decides no better than its marks', () => {
  it.each([
    ['between two marks, half that gap', '3.5', '1/2'],
    ['between two that lie wider apart', '5', '1'],
    ['on a mark between equal gaps', '3', '1/2'],
    ['on a mark, the wider of its gaps', '4', '1'],
    ['on the first mark, its only gap', '2', '1/2'],
    ['on the last mark, its only gap', '6', '1'],
    ['below the first mark, the first gap', '1', '1/2'],
    ['beyond the last mark, the last gap', '7', '1'],
  ])('%s', (_, amount, expected) => {
    const [n = '', d = '1'] = expected.split('/');
    expect(equals(halfGap(MARKS, parseDecimal(amount)), fraction(BigInt(n), BigInt(d)))).toBe(true);
  });

  it('on a mark, the wider of its gaps where that is the lower one', () => {
    const marks = ['1', '3', '4', '5'].map((each) => parseDecimal(each));
    expect(equals(halfGap(marks, fraction(3)), fraction(1))).toBe(true);
  });

  it('as half a gap, rectangular', () => {
    expect(Object.values(termsOf({ marks: MARKS }, { amount: parseDecimal('5') }))).toEqual([
      1 / Math.sqrt(3),
    ]);
  });

  it('and a reading given as a range stands for the marks', () => {
    const found = termsOf(
      { marks: MARKS },
      { amount: parseDecimal('5'), range: { below: fraction(1, 2), above: fraction(1, 2) } },
    );
    expect(found).toEqual({ 'range read of mic at s.yaml#/readings/0/at/1': 0.5 / Math.sqrt(3) });
  });
});

it('the types that a register may name are these: an instrument of another counts as any other', () => {
  const lengths = ['micrometer', 'inside micrometer', 'depth micrometer', 'height gauge', 'ball micrometer'];
  const compared = ['bore gauge', 'dial indicator', 'caliper', 'feeler gauge', 'gauging strip'];
  const masters = ['setting master', 'gauge block'];
  const forces = ['torque wrench', 'spring scale', 'pressure gauge', 'thermometer', 'balance', 'protractor'];
  const rest = ['burette', 'radius gauge', 'roughness tester', 'hardness tester', 'other'];
  const all = [lengths, compared, masters, forces, rest].flat();
  expect(INSTRUMENT_TYPES).toEqual(all);
  expect(MEASURED_WITH).toEqual([...all, 'by eye']);
});

it('no gap is known of a single mark', () => {
  expect(equals(halfGap(MARKS.slice(0, 1), fraction(5)), fraction(0))).toBe(true);
});

describe('what an instrument is called', () => {
  it.each([
    ['micrometer', 'a micrometer', 'an unnamed micrometer'],
    ['inside micrometer', 'an inside micrometer', 'an unnamed inside micrometer'],
    ['other', 'an instrument', 'an unnamed instrument'],
  ] as const)('%s', (type, named, unnamed) => {
    expect(anInstrument(type)).toBe(named);
    expect(anUnnamed(type)).toBe(unnamed);
  });

  it('by eye it is none', () => expect(anInstrument(BY_EYE)).toBe('by eye'));
});

describe('how much the register says of an instrument', () => {
  const FIGURES: Readonly<Record<string, Partial<Instrument>>> = {
    resolution: { resolution: fraction(1) },
    'its largest error': { maxError: { amount: fraction(1) } },
    repeatability: { repeatability: fraction(1) },
    calibration: { calibration: { uncertainty: fraction(1), k: 2 } },
    marks: { marks: MARKS },
    'errors that it is put right by': { putRight: { from: fraction(0), to: fraction(1) } },
  };

  it('with its name, range and material alone it is bare', () => {
    const range = { from: fraction(0), to: fraction(1) };
    expect(isBare({ ...MIC, range, material: 'steel' })).toBe(true);
  });

  it.each(Object.keys(FIGURES))('with %s it is not', (figure) =>
    expect(isBare({ ...MIC, ...FIGURES[figure] })).toBe(false),
  );

  it.each([
    ['nothing', {}, true],
    ['an error that all its readings have alike', FIGURES['its largest error'], true],
    ['how it was calibrated', FIGURES.calibration, true],
    ['resolution', FIGURES.resolution, false],
    ['repeatability', FIGURES.repeatability, false],
    ['marks', FIGURES.marks, false],
  ])('with %s its steps are unknown: %s', (_, figures, isUnknown) =>
    expect(isWithoutSteps({ ...MIC, ...figures })).toBe(isUnknown),
  );

  it.each(['setting master', 'gauge block'] as const)('a %s is not read in steps', (type) =>
    expect(isWithoutSteps({ ...MIC, type })).toBe(false),
  );
});
