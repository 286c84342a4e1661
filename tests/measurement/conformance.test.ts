import { describe, expect, test } from 'vitest';
import {
  capability,
  coarsestUncertainty,
  conformanceProbability,
  expandedFactor,
  LEAST_CAPABILITY,
  welchSatterthwaite,
} from '../../src/measurement/conformance.ts';
import { normalDensity, normalQuantile } from '../../src/measurement/distributions/normal.ts';
import { tQuantile } from '../../src/measurement/distributions/studentT.ts';

const INFINITE = Number.POSITIVE_INFINITY;

/** One value with a well-known uncertainty. */
const probability = (y: number, u: number, limits: { min?: number; max?: number }): number =>
  conformanceProbability({ least: y, greatest: y, u, dof: INFINITE, ...limits });

describe('JCGM 106:2012 (inputs and printed results from memory, the long figures worked separately)', () => {
  test.each([
    ['7.3.3 example 1, breakdown voltage below its upper limit', -5.47, 0.05, { max: -5.4 }, 0.91924, '0.92'],
    ['7.3.3 example 2, bursting pressure above its lower limit', 507, 8.5, { min: 490 }, 0.97725, '0.98'],
    ['7.4, viscosity of an oil between two limits', 13.6, 1.8, { min: 12.5, max: 16.3 }, 0.66263, '0.66'],
  ])('%s', (_, y, u, limits, worked, printed) => {
    expect(probability(y, u, limits)).toBeCloseTo(worked, 5);
    expect(probability(y, u, limits).toFixed(2)).toBe(printed);
  });

  test('8.3.3.2, a speed of 107 km/h proves with 99.9 % that the limit of 100 was passed', () => {
    const speed = 100 / (1 - 0.02 * normalQuantile(0.999));
    expect(speed).toBeCloseTo(106.588, 3);
    expect(probability(speed, 0.02 * speed, { max: 100 })).toBeCloseTo(0.001, 12);
    expect(Math.ceil(speed)).toBe(107);
  });

  // 9.5: resistors of 1500 Ω ± 0.2 made with a standard deviation of 0.12 and measured with one of 0.04.
  test.each([
    ['with a guard band', 0.18, 0.009878],
    ['by simple acceptance', 0.2, 0.01894],
  ])('9.5, the share of bad resistors accepted %s', (_, accept, worked) => {
    expect(consumersRisk(0.12, 0.04, 0.2, accept)).toBeCloseTo(worked, 5);
  });

  // Position in the tolerance against capability index; worked separately.
  test.each([
    [1, [0.5, 0.5792, 0.6553, 0.84, 0.9545]],
    [2, [0.5, 0.6554, 0.7881, 0.9772, 0.9999]],
    [4, [0.5, 0.7881, 0.9452, 1, 1]],
    [10, [0.5, 0.9772, 1, 1, 1]],
  ])('conformance probability across a tolerance of capability %d', (index, row) => {
    const u = 1 / (4 * index);
    const worked = [0, 0.05, 0.1, 0.25, 0.5].map((y) => probability(y, u, { min: 0, max: 1 }));
    for (const [column, value] of row.entries()) expect(worked[column]).toBeCloseTo(value, 4);
  });
});

/** The chance that a part is outside ±tolerance and yet read inside ±accept, summed over what may be read. */
function consumersRisk(made: number, measured: number, tolerance: number, accept: number): number {
  const spread = Math.hypot(made, measured);
  const u = (made * measured) / spread;
  const steps = 2000;
  const width = (2 * accept) / steps;
  let risk = 0;
  for (let step = 0; step < steps; step++) {
    const read = -accept + (step + 0.5) * width;
    const y = (read * made ** 2) / spread ** 2;
    const bad = 1 - probability(y, u, { min: -tolerance, max: tolerance });
    risk += ((bad * normalDensity(read / spread)) / spread) * width;
  }
  return risk;
}

// ISO 14253-1:2017: proven inside at 95 %, proven outside at 5 %. A clearance of 0.0015 to 0.0025 in read with two
// micrometers of 4 µm maximum error, with a strip known to ±0.00025 in, and with one known to ±0.0005 in.
describe('a clearance against its limits under the rule of ISO 14253-1 (probabilities worked separately)', () => {
  const micrometers = Math.SQRT2 * (4 / Math.sqrt(3));
  const fineStrip = (0.00025 * 25400) / Math.sqrt(3);
  const coarseStrip = (0.0005 * 25400) / Math.sqrt(3);
  const limits = { min: 0.0015 * 25400, max: 0.0025 * 25400 };
  test.each([
    [0.0012, 0.0098, 0.0188, 0.1493],
    [0.0014, 0.2184, 0.2442, 0.3644],
    [0.0015, 0.5, 0.5, 0.4997],
    [0.0016, 0.7816, 0.7558, 0.6346],
    [0.0018, 0.9902, 0.9812, 0.843],
    [0.002, 0.9999, 0.9995, 0.9167],
    [0.0028, 0.0098, 0.0188, 0.1493],
  ])('%f in', (inches, ...row) => {
    const y = inches * 25400;
    const worked = [micrometers, fineStrip, coarseStrip].map((u) => probability(y, u, limits));
    for (const [column, value] of row.entries()) expect(worked[column]).toBeCloseTo(value, 4);
  });

  test('the coarse strip can prove nothing inside, wherever it reads', () => {
    expect(capability(limits.max - limits.min, coarseStrip)).toBeCloseTo(0.866, 3);
    expect(capability(limits.max - limits.min, micrometers)).toBeGreaterThan(LEAST_CAPABILITY);
  });
});

test('a capability of 0.98 is the least with which the best reading reaches 95 %', () => {
  const best = (index: number): number => probability(0.5, 1 / (4 * index), { min: 0, max: 1 });
  expect(best(LEAST_CAPABILITY)).toBeGreaterThan(0.95);
  expect(best(LEAST_CAPABILITY - 0.0001)).toBeLessThan(0.95);
  expect(best(1)).toBeCloseTo(0.9545, 4);
  expect(capability(1, coarsestUncertainty(1))).toBeCloseTo(0.97998, 5);
});

// The one-sided acceptance limits of ILAC-G8:09/2019 table 1, in parts of U = 2u; worked separately.
test.each([
  [0.83, 0.0485],
  [1, 0.02275],
  [1.5, 0.00135],
])('a guard band of %f U leaves a risk of %f', (part, risk) => {
  expect(1 - probability(-2 * part, 1, { max: 0 })).toBeCloseTo(risk, 4);
});

describe('conformance of a span', () => {
  const span = { least: 10, greatest: 12, u: 0, dof: INFINITE };

  test.each([
    [{ min: 10, max: 12 }, 1],
    [{ min: 10.001, max: 12 }, 0],
    [{ min: 10, max: 11.999 }, 0],
    [{ max: 12 }, 1],
    [{ min: 10 }, 1],
    [{}, 1],
  ])(
    'without uncertainty 10 to 12 against %o is a plain comparison, on the limit inside',
    (limits, inside) => {
      expect(conformanceProbability({ ...span, ...limits })).toBe(inside);
    },
  );

  test('its least is held against min and its greatest against max', () => {
    expect(conformanceProbability({ ...span, u: 1, min: 8, max: 15 })).toBeCloseTo(
      0.9772499 + 0.9986501 - 1,
      6,
    );
  });

  test('no limit at all is always met, and a span wider than its limits never is', () => {
    expect(conformanceProbability({ ...span, u: 1 })).toBe(1);
    expect(conformanceProbability({ ...span, least: 0, greatest: 30, u: 1, min: 10, max: 12 })).toBe(0);
  });

  test('far outside either limit the probability keeps its digits', () => {
    const below = conformanceProbability({ least: -10, greatest: -10, u: 1, dof: INFINITE, min: 0, max: 1 });
    const above = conformanceProbability({ least: 11, greatest: 11, u: 1, dof: INFINITE, min: 0, max: 1 });
    expect(below).toBeGreaterThan(7e-24);
    expect(below).toBeCloseTo(above, 38);
  });

  test('few degrees of freedom leave more risk: 4.5 u at four leaves 5.4e-3', () => {
    const past = { least: 4.5, greatest: 4.5, u: 1, max: 0 };
    expect(conformanceProbability({ ...past, dof: 4 })).toBeCloseTo(5.4e-3, 4);
    expect(conformanceProbability({ ...past, dof: INFINITE })).toBeCloseTo(3.4e-6, 7);
  });

  test('a negative uncertainty, or none, is refused', () => {
    for (const u of [-1, Number.NaN])
      expect(() => conformanceProbability({ ...span, u })).toThrow(
        new RangeError(`a standard uncertainty is not negative, as ${u} is`),
      );
  });
});

// Inputs and printed results seen in published data sets of the example; the causes named here are from memory.
describe('JCGM 100:2008 example H.1, calibration of an end gauge (in nm)', () => {
  const length = 50_000_623;
  const terms = [
    { u: 25, dof: 18 }, // the standard's certificate
    { u: 13 / Math.sqrt(5), dof: 24 }, // mean of five observations
    { u: 10 / tQuantile(0.975, 5), dof: 5 }, // comparator, random
    { u: 20 / 3, dof: 8 }, // comparator, systematic
    { u: (length * 0.1 * 1e-6) / Math.sqrt(3), dof: 50 }, // difference of expansion
    { u: (length * 11.5e-6 * 0.05) / Math.sqrt(3), dof: 2 }, // difference of temperature
  ];
  const combined = Math.hypot(...terms.map(({ u }) => u));
  const dof = welchSatterthwaite(terms);

  test('combined uncertainty, degrees of freedom and expanded uncertainty', () => {
    expect(combined).toBeCloseTo(31.658, 3);
    expect(dof).toBeCloseTo(16.741, 3);
    expect(expandedFactor(dof, 0.99)).toBeCloseTo(2.9208, 4);
    expect(expandedFactor(dof, 0.99) * combined).toBeCloseTo(92.47, 2);
    expect(expandedFactor(dof) * combined).toBeCloseTo(67.1, 1);
  });

  // The guide multiplies what it has rounded for print: 2.92 × 32 = 93.4, hence its 93 where 92.47 is exact.
  test('the printed 93 nm is the product of the rounded figures', () => {
    const factor = Number(expandedFactor(dof, 0.99).toFixed(2));
    expect(factor * Math.round(combined)).toBeCloseTo(93.44, 10);
  });

  test('the contributions as rounded for print', () => {
    const sizes = [25, 5.8, 3.9, 6.7, length * 0.1 * 0.58e-6, length * 0.029 * 11.5e-6];
    const rounded = terms.map((term, index) => ({ ...term, u: sizes[index] ?? Number.NaN }));
    expect(welchSatterthwaite(rounded)).toBeCloseTo(16.645, 3);
  });
});

describe('degrees of freedom', () => {
  test('terms that are known well drop out', () => {
    expect(
      welchSatterthwaite([
        { u: 3, dof: INFINITE },
        { u: 4, dof: INFINITE },
      ]),
    ).toBe(INFINITE);
    expect(
      welchSatterthwaite([
        { u: 1, dof: 4 },
        { u: 0, dof: 1 },
      ]),
    ).toBe(4);
    expect(
      welchSatterthwaite([
        { u: 1, dof: 4 },
        { u: 1, dof: INFINITE },
      ]),
    ).toBeCloseTo(16, 12);
    expect(welchSatterthwaite([])).toBe(INFINITE);
  });

  test('are truncated before the factor is looked up, and are at least one', () => {
    expect(expandedFactor(16.99)).toBe(tQuantile(0.975, 16));
    expect(expandedFactor(0.4)).toBeCloseTo(12.7062, 4);
    expect(expandedFactor(INFINITE)).toBeCloseTo(1.959963984540054, 14);
    expect(() => expandedFactor(Number.NaN)).toThrow(
      new RangeError('the degrees of freedom are not a number'),
    );
  });
});
