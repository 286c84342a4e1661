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
