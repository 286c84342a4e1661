import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conformanceProbability } from '../../src/measurement/conformance.ts';
import { normalQuantile } from '../../src/measurement/distributions/normal.ts';
import { drawnTowards, globalRisks, provenWindow } from '../../src/measurement/risk.ts';
import { runs } from '../propertyRuns.ts';

// JCGM 106:2012, 9.5: resistors of 1500 Ω, deviation 0.12, measured with 0.04, tolerance ± 0.2. Inputs as printed; the printed
// risks (about 1 % and 7 % with the guard band) from memory, their long figures worked separately.
describe('JCGM 106:2012, 9.5, resistors', () => {
  const usual = { mean: 1500, deviation: 0.12 };
  const tolerance = { min: 1499.8, max: 1500.2 };
  it.each([
    ['with a guard band', { min: 1499.82, max: 1500.18 }, 0.009878, 0.06903, '1', '7'],
    ['by simple acceptance', tolerance, 0.01894, 0.03721, '2', '4'],
  ])('%s', (_, accept, bad, good, printedBad, printedGood) => {
    const risks = globalRisks(usual, 0.04, tolerance, accept);
    expect(risks.badAccepted).toBeCloseTo(bad, 5);
    expect(risks.goodRejected).toBeCloseTo(good, 4);
    expect((100 * risks.badAccepted).toFixed(0)).toBe(printedBad);
    expect((100 * risks.goodRejected).toFixed(0)).toBe(printedGood);
  });

  it('a rule that accepts nothing accepts nothing bad and rejects all that is good', () => {
    const { badAccepted, goodRejected } = globalRisks(usual, 0.04, tolerance, undefined);
    expect(badAccepted).toBe(0);
    const good = conformanceProbability({
      least: 1500,
      greatest: 1500,
      u: 0.12,
      dof: Number.POSITIVE_INFINITY,
      ...tolerance,
    });
    expect(goodRejected).toBeCloseTo(good, 9);
  });
});

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true });

it('a part is accepted or rejected, good or bad: the shares of all parts make one', () => {
  fc.assert(
    fc.property(figure(-3, 3), figure(0.2, 3), figure(0.05, 2), (mean, deviation, u) => {
      const tolerance = { min: -1, max: 1 };
      const guarded = globalRisks({ mean, deviation }, u, tolerance, { min: -0.5, max: 0.5 });
      const simple = globalRisks({ mean, deviation }, u, tolerance, tolerance);
      expect(guarded.badAccepted).toBeLessThanOrEqual(simple.badAccepted + 1e-12);
      expect(guarded.goodRejected).toBeGreaterThanOrEqual(simple.goodRejected - 1e-12);
      expect(simple.badAccepted + simple.goodRejected).toBeLessThan(1);
    }),
    runs(200, 40),
  );
});

it('a proven window begins where a reading proves a part inside', () => {
  // JCGM 106:2012 table 1 (from memory): z 1.64 for 95 %, of one limit.
  expect(provenWindow({ max: 10 }, 2, 0.95)?.max).toBeCloseTo(10 - 2 * normalQuantile(0.95), 9);
  expect(provenWindow({ min: 0, max: 3.8 }, 1, 0.95)).toBeUndefined();
  const { min, max } = provenWindow({ min: 0, max: 4 }, 1, 0.95) ?? {};
  const proven = { least: min ?? 0, greatest: min ?? 0, u: 1, dof: Number.POSITIVE_INFINITY, min: 0, max: 4 };
  expect(conformanceProbability(proven)).toBeCloseTo(0.95, 12);
  expect(min).toBeLessThan(2);
  expect((min ?? 0) + (max ?? 0)).toBeCloseTo(4, 9);
  // The same figures in another unit.
  const inThousandths = provenWindow({ min: 0, max: 0.004 }, 0.001, 0.95);
  expect(inThousandths?.min).toBeCloseTo((min ?? 0) / 1000, 12);
  expect(inThousandths?.max).toBeCloseTo((max ?? 0) / 1000, 12);
});

it('a reading is drawn towards what parts are as a rule, the more the coarser it is', () => {
  expect(drawnTowards(10, 1, { mean: 0, deviation: 1 })).toEqual({ value: 5, u: Math.SQRT1_2 });
  // Of variances of 4 and 1 four fifths of the way from 20 to 25 are left.
  expect(drawnTowards(25, 1, { mean: 20, deviation: 2 })).toEqual({ value: 24, u: Math.sqrt(0.8) });
  expect(drawnTowards(10, 1e-9, { mean: 0, deviation: 1 }).value).toBeCloseTo(10, 9);
});

describe('a limit on one side', () => {
  const usual = { mean: 10, deviation: 2 };
  const far = 1000;
  it.each([
    ['max', { max: 13 }, { max: 12.5 }],
    ['min', { min: 8 }, { min: 8.5 }],
  ])('a %s alone is as one of two of which no part reaches the other', (_, tolerance, accept) => {
    const both = (window: object) => ({ min: -far, max: far, ...window });
    const alone = globalRisks(usual, 0.5, tolerance, accept);
    const two = globalRisks(usual, 0.5, both(tolerance), both(accept));
    expect(alone.badAccepted).toBeCloseTo(two.badAccepted, 9);
    expect(alone.goodRejected).toBeCloseTo(two.goodRejected, 9);
    expect(alone.badAccepted).toBeGreaterThan(0.001);
    expect(alone.goodRejected).toBeGreaterThan(0.01);
  });

  it('of parts that all pass none is bad, and all that is rejected is good', () => {
    const { badAccepted, goodRejected } = globalRisks(usual, 0.5, {}, { max: 10 });
    expect(badAccepted).toBeCloseTo(0, 12);
    expect(goodRejected).toBeCloseTo(0.5, 9);
  });

  it('a reading is proven as far from either as the other way round', () => {
    expect(provenWindow({ min: 10 }, 2, 0.95)).toEqual({
      min: expect.closeTo(10 + 2 * normalQuantile(0.95), 9),
      max: undefined,
    });
    expect(provenWindow({}, 2, 0.95)).toEqual({ min: undefined, max: undefined });
  });
});
