import { describe, expect, it } from 'vitest';
import { welchSatterthwaite } from '../../src/measurement/conformance.ts';
import type { Instrument } from '../../src/measurement/instrument.ts';
import { type ReadingError, readingTerms } from '../../src/measurement/readingTerms.ts';
import { addValues, standardUncertainty, subtractValues, type Value } from '../../src/measurement/value.ts';
import { fraction } from '../../src/quantity/fraction.ts';

const um = (count: number) => fraction(count * 10_000);

const mic: Instrument = {
  id: 'mic',
  type: 'micrometer',
  resolution: um(2),
  maxError: { amount: um(4) },
  repeatability: um(3),
  assumed: false,
};
const gauge: Instrument = { id: 'gauge', type: 'bore gauge', resolution: um(1), assumed: false };

const read = (of: Instrument, reading: Partial<ReadingError>, setter?: Instrument): Value => {
  const whole = { amount: fraction(0), id: 'a', block: 'b', ...reading };
  return { amount: whole.amount, terms: readingTerms(of, whole, setter) };
};

const inUm = (value: Value): number => standardUncertainty(value) / 1e4;

describe('a gauge that was zeroed in a micrometer', () => {
  const zeroing = Math.hypot(2 / Math.sqrt(12), 3);

  it('carries the reading that the micrometer was set to, with its steps and its scatter', () => {
    const alone = inUm(read(gauge, {}));
    const setterError = inUm(
      read({ id: 'mic', type: 'micrometer', maxError: { amount: um(4) }, assumed: false }, {}),
    );
    expect(inUm(read(gauge, {}, mic))).toBeCloseTo(Math.hypot(alone, setterError, zeroing), 9);
  });

  it('has it once: two readings from one zero differ by their own errors alone', () => {
    const difference = subtractValues(read(gauge, { id: 'x' }, mic), read(gauge, { id: 'y' }, mic));
    expect(inUm(difference)).toBeCloseTo(Math.SQRT2 / Math.sqrt(12), 9);
  });

  it('has another after it was zeroed anew', () => {
    const difference = subtractValues(
      read(gauge, { id: 'x' }, mic),
      read(gauge, { id: 'y', block: 'c' }, mic),
    );
    expect(inUm(difference)).toBeCloseTo(Math.SQRT2 * Math.hypot(1 / Math.sqrt(12), zeroing), 9);
  });

  it('has no steps of a master that is not read', () => {
    const master: Instrument = { id: 'ring', type: 'setting master', resolution: um(2), assumed: false };
    expect(inUm(read(gauge, {}, master))).toBeCloseTo(inUm(read(gauge, {})), 9);
  });
});

describe('an estimate that is met twice', () => {
  const study = { name: 'gauges', dof: 5 };
  const studied: Instrument = { id: 'mic', type: 'micrometer', repeatability: um(3), study, assumed: false };

  it('keeps the degrees of freedom that it was found with', () => {
    const taper = subtractValues(read(studied, { id: 'front' }), read(studied, { id: 'rear' }));
    expect(inUm(taper)).toBeCloseTo(3 * Math.SQRT2, 9);
    expect(welchSatterthwaite([...taper.terms.values()])).toBeCloseTo(5, 9);
  });

  it('adds them to those of another estimate, each for its share', () => {
    const other: Instrument = { ...studied, id: 'bore', study: { name: 'bores', dof: 8 } };
    const sum = addValues(read(studied, { id: 'x' }), read(other, { id: 'y' }));
    // JCGM 100:2008, G.4.1: equal shares, 1 / (0.5²/5 + 0.5²/8).
    expect(welchSatterthwaite([...sum.terms.values()])).toBeCloseTo(1 / (0.25 / 5 + 0.25 / 8), 9);
  });
});

it('the error of an instrument before its last calibration is another one than after', () => {
  const calibrated: Instrument = { ...mic, calibrated: '2026-02-01' };
  const shared = subtractValues(
    read(calibrated, { id: 'x', on: '2026-02-02' }),
    read(calibrated, { id: 'y', on: '2026-02-03' }),
  );
  const apart = subtractValues(
    read(calibrated, { id: 'x', on: '2026-01-30' }),
    read(calibrated, { id: 'y', on: '2026-02-03' }),
  );
  expect(inUm(apart) ** 2 - inUm(shared) ** 2).toBeCloseTo((2 * 4 ** 2) / 3, 9);
});

describe('the sources of a reading by name', () => {
  const KNOWN = Number.POSITIVE_INFINITY;
  const sources = (of: Instrument, reading: Partial<ReadingError> = {}, setter?: Instrument) =>
    Object.fromEntries(
      [...read(of, reading, setter).terms].map(([source, { u: _, ...term }]) => [source, term]),
    );
  const lasting = { dof: KNOWN, instrument: 'mic', of: 'mic' };
  const certain = { dof: KNOWN, of: 'mic' };

  it('are those of its calibration, which all its readings share, and its own', () => {
    expect(sources({ ...mic, calibration: { uncertainty: um(1), k: 2 } })).toEqual({
      'largest error of mic': lasting,
      'calibration of mic': lasting,
      'resolution of mic at a': certain,
      'repeatability of mic at a': certain,
    });
  });

  it('of a gauge set with a micrometer are those of both, and of the zero of its block', () => {
    const study = { name: 'gauges', dof: 5 };
    expect(sources(gauge, {}, { ...mic, study })).toEqual({
      'largest error of mic': lasting,
      'resolution of mic at zeroing at b': certain,
      'repeatability of mic by study gauges at zeroing at b': {
        dof: 5,
        estimate: 'study gauges of mic',
        of: 'mic',
      },
      'resolution of gauge at a': { dof: KNOWN, of: 'gauge' },
    });
    expect(Object.keys(sources(gauge, { zeroedAt: 'main 2' }, mic))).toContain(
      'resolution of mic at zeroing at main 2',
    );
  });

  it('of an instrument that nobody named hold for its block alone, and are no calibration of it', () => {
    expect(sources({ ...mic, isNameless: true, resolution: um(0), repeatability: um(0) })).toEqual({
      'largest error of mic at b': certain,
    });
    const { block: _, ...alone } = { amount: fraction(0), id: 'a', block: 'b' };
    expect([...readingTerms({ ...mic, isNameless: true }, alone).keys()]).toContain(
      'largest error of mic at a',
    );
  });

  it.each([
    ['the day before a calibration', { calibrated: '2026-02-01' }, '2026-01-31', ' before 2026-02-01'],
    ['its day', { calibrated: '2026-02-01' }, '2026-02-01', ''],
    ['no known day', { calibrated: '2026-02-01' }, undefined, ''],
    ['a certificate until the next', { until: '2026-06-01' }, '2026-02-01', ' before 2026-06-01'],
  ])('on %s are told apart by it', (_, more, on, words) => {
    const found = sources({ ...mic, ...more }, on === undefined ? {} : { on });
    expect(Object.keys(found)).toContain(`largest error of mic${words}`);
  });

  it.each([
    [9, true],
    [10, false],
    [20, false],
    [21, true],
  ])('put right from 10 to 20 the largest error at %i counts: %s', (amount, isThere) => {
    const putRight = { from: fraction(10), to: fraction(20) };
    const found = sources({ ...mic, putRight }, { amount: fraction(amount) });
    expect(Object.hasOwn(found, 'largest error of mic')).toBe(isThere);
  });

  it('a gauge’s setter is off by what it is at the size that it was set to', () => {
    const wrench: Instrument = { ...mic, maxError: { share: fraction(1, 100) } };
    const errorOf = (reading: Partial<ReadingError>) =>
      read(gauge, { amount: um(100), ...reading }, wrench).terms.get('largest error of mic')?.u ?? 0;
    expect(errorOf({}) / 1e4).toBeCloseTo(1 / Math.sqrt(3), 9);
    expect(errorOf({ setAt: um(300) }) / 1e4).toBeCloseTo(3 / Math.sqrt(3), 9);
  });

  it('read as a range are the range itself, or the marks of a strip where it has no upper end', () => {
    const strip: Instrument = { id: 'mic', type: 'gauging strip', marks: [um(1), um(2)], assumed: false };
    const whole = { ...certain, isRange: true };
    expect(sources(strip, { range: { below: um(1), above: um(1) } })).toEqual({
      'range read of mic at a': whole,
    });
    expect(sources(strip, { range: { below: um(1), above: undefined } })).toEqual({
      'marks of mic at a': whole,
    });
    expect(sources(strip)).toEqual({ 'marks of mic at a': certain });
  });
});

// JCGM 100:2008, 4.2.3 (from memory): the mean of n readings scatters by s/√n, with n − 1 degrees of freedom.
describe('a point that was read four times', () => {
  const repeated = (deviation: number, of: Instrument = mic) =>
    [...read(of, { repeats: { count: 4, deviation: deviation * 1e4 } }).terms].filter(([source]) =>
      /repeat/.test(source),
    );

  it.each([
    [
      'less than the register says',
      2,
      'repeatability of mic at a',
      { u: 1.5e4, dof: Number.POSITIVE_INFINITY, of: 'mic' },
    ],
    [
      'just as the register says',
      3,
      'repeatability of mic at a',
      { u: 1.5e4, dof: Number.POSITIVE_INFINITY, of: 'mic' },
    ],
    ['more than the register says', 5, 'spread of repeats at a', { u: 2.5e4, dof: 3, of: 'mic' }],
  ])('and scatters %s', (_, deviation, source, term) => {
    expect(repeated(deviation)).toEqual([[source, term]]);
  });

  it('with an instrument of unknown repeatability scatters as it shows, and not at all where all are alike', () => {
    expect(repeated(2, gauge)).toEqual([['spread of repeats at a', { u: 1e4, dof: 3, of: 'gauge' }]]);
    expect(repeated(0, gauge)).toEqual([]);
  });
});
