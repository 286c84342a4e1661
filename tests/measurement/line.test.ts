import { describe, expect, test } from 'vitest';
import { fitLine, type LineFit, type LinePoint, valueAt } from '../../src/measurement/line.ts';
import { confidenceInterval } from '../../src/measurement/linePrediction.ts';
import { readPoints } from './csv.ts';
import { mustFit } from './mustFit.ts';

/** Agreement to a number of significant digits. */
function expectDigits(got: number | null, value: number, digits: number): void {
  expect(Math.abs((got ?? Number.NaN) / value - 1)).toBeLessThan(10 ** -digits);
}

/** A line as the published examples print it: by its height at 0 and its slope. */
function asPublished(fit: LineFit) {
  const uAt = (x: number): number => confidenceInterval(fit, x).u ?? Number.NaN;
  const errors = [...(fit.own ?? []), ...fit.shared];
  const slopeUncertainty = Math.hypot(...errors.map(({ turn }) => turn));
  const covariance = (uAt(1) ** 2 - uAt(0) ** 2 - slopeUncertainty ** 2) / 2;
  return {
    intercept: valueAt(fit, 0),
    interceptUncertainty: uAt(0),
    slopeUncertainty,
    correlation: covariance / uAt(0) / slopeUncertainty,
  };
}

describe('NIST Statistical Reference Datasets, certified values', () => {
  test('Norris, a straight line of 36 points', () => {
    const fit = mustFit(readPoints('nist-strd-norris', 'x', 'y'));
    const { intercept, interceptUncertainty, slopeUncertainty } = asPublished(fit);
    expect(fit.dof).toBe(34);
    expectDigits(intercept, -0.262323073774029, 12);
    expectDigits(fit.slope, 1.00211681802045, 13);
    expectDigits(interceptUncertainty, 0.232818234301152, 12);
    expectDigits(slopeUncertainty, 0.429796848199937e-3, 12);
    expectDigits(fit.scatter, 0.884796396144373, 12);
  });
});

// JCGM 100:2008 example H.3: the correction of a thermometer against its reading less 20 °C.
describe('JCGM 100:2008 example H.3', () => {
  const rows = readPoints('gum-h3', 't_degC', 'b_degC');
  const fit = mustFit(rows.map(({ x, y }) => ({ x: x - 20, y })));
  const { intercept, interceptUncertainty, slopeUncertainty, correlation } = asPublished(fit);

  test('as printed', () => {
    expect(intercept.toFixed(4)).toBe('-0.1712');
    expect(interceptUncertainty.toFixed(4)).toBe('0.0029');
    expect(fit.slope.toFixed(5)).toBe('0.00218');
    expect(slopeUncertainty.toFixed(5)).toBe('0.00067');
    expect(correlation.toFixed(3)).toBe('-0.930');
    expect(fit.dof).toBe(9);
  });

  test('in full, worked separately', () => {
    expectDigits(intercept, -0.17120379, 8);
    expectDigits(fit.slope, 0.00218269774, 8);
    expectDigits(fit.scatter, 0.00349756396, 8);
    expectDigits(interceptUncertainty, 0.00287759784, 8);
    expectDigits(slopeUncertainty, 0.000667938773, 8);
    expectDigits(correlation, -0.930429603, 8);
    expectDigits((fit.scatter ?? 0) ** 2 * fit.dof, 0.000110096583109, 11);
  });
});

// Graybill & Iyer, "Regression Analysis" (1994), chapter 6; the fits were worked separately.
test.each([
  ['graybill-iyer-thermometer', 'temp', 'read', -3.13952381, 1.0302381, 0.234446325, 168],
  ['graybill-iyer-chamber', 'dial', 'temp', 198.456364, 3.02981818, 4.0450059, 11000],
])('the line of %s', (name, x, y, intercept, slope, deviation, sxx) => {
  const fit = mustFit(readPoints(name, x, y));
  expectDigits(valueAt(fit, 0), intercept, 8);
  expectDigits(fit.slope, slope, 8);
  expectDigits(fit.scatter, deviation, 8);
  expectDigits(asPublished(fit).slopeUncertainty, deviation / Math.sqrt(sxx), 8);
});

describe('points that are known to different uncertainties', () => {
  const scattered = [
    { x: 0, y: 1, own: 0.2 },
    { x: 1, y: 3, own: 0.2 / Math.SQRT2 },
    { x: 2, y: 4, own: 0.2 },
  ];

  // Sums of the normal equations by hand with weights 1, 2, 1: S 4, Sx 4, Sy 11, Sxx 6, Sxy 14, determinant 8, Σ w r² 1/4.
  test('three of them agree with the normal equations by hand', () => {
    const fit = mustFit(scattered);
    const { intercept, interceptUncertainty, slopeUncertainty, correlation } = asPublished(fit);
    expect(fit.slope).toBeCloseTo(12 / 8, 14);
    expect(intercept).toBeCloseTo(10 / 8, 14);
    expect(slopeUncertainty).toBeCloseTo(Math.sqrt((4 * 0.25) / 8), 14);
    expect(interceptUncertainty).toBeCloseTo(Math.sqrt((6 * 0.25) / 8), 14);
    expect(correlation).toBeCloseTo(-4 / Math.sqrt(24), 14);
    expect(fit.scatter).toBeCloseTo(0.5 / 0.2, 14);
  });

  test('many of them agree with the closed form', () => {
    const points = readPoints('gum-h3', 't_degC', 'b_degC').map((point, index) => ({
      ...point,
      own: 0.001 * (0.5 + (index % 4)),
    }));
    const fit = mustFit(points);
    const published = asPublished(fit);
    const expected = closedForm(points);
    expect(fit.scatter).toBeGreaterThan(1);
    expectDigits(fit.slope, expected.slope, 9);
    expectDigits(published.intercept, expected.intercept, 9);
    expectDigits(published.slopeUncertainty, expected.slopeUncertainty, 8);
    expectDigits(published.interceptUncertainty, expected.interceptUncertainty, 8);
  });

  test('that are closer to the line than they allow, these count as they were stated', () => {
    const fit = mustFit(scattered.map((point) => ({ ...point, own: point.own * 10 })));
    expect(fit.scatter).toBe(1);
    expect(asPublished(fit).slopeUncertainty).toBeCloseTo(2 * Math.sqrt(4 / 8), 13);
  });

  test('that are all alike and smaller than the scatter, they are as good as none', () => {
    const plain = readPoints('graybill-iyer-chamber', 'dial', 'temp');
    const fit = mustFit(plain.map((point) => ({ ...point, own: 1e-3 })));
    const expected = mustFit(plain);
    expectDigits(fit.slope, expected.slope, 14);
    expectDigits((fit.scatter ?? 0) * 1e-3, expected.scatter ?? 0, 12);
    expectDigits(asPublished(fit).slopeUncertainty, asPublished(expected).slopeUncertainty, 12);
  });
});

describe('an error that is the same in several points', () => {
  const atHours = (heights: readonly number[], shared: readonly number[], own = 1): readonly LinePoint[] =>
    heights.map((y, index) => ({ x: index, y, own, shared: new Map([['mic', shared[index] ?? 0]]) }));

  test('lifts the line and does not turn it where it is in all of them', () => {
    const alone = mustFit(atHours([1, 4, 2, 6], [0, 0, 0, 0]));
    const fit = mustFit(atHours([1, 4, 2, 6], [50, 50, 50, 50]));
    expect(fit.slope).toBeCloseTo(alone.slope, 11);
    expect(fit.scatter).toBeCloseTo(alone.scatter ?? 0, 11);
    expect(fit.shared).toHaveLength(1);
    expect(fit.shared[0]?.lift).toBeCloseTo(50, 11);
    expect(fit.shared[0]?.turn).toBeCloseTo(0, 11);
  });

  // Two readings of a micrometer off by 30, one of a finer gauge: V = I + c·cᵀ, inverted by hand (Sherman and Morrison).
  test('gives the points that have it less weight together', () => {
    const fit = mustFit(atHours([0, 1, 2], [30, 30, 0]));
    expect(fit.slope).toBeCloseTo(1, 12);
    const shared = fit.shared[0];
    // V⁻¹ = I − c·cᵀ/1801: s11 = 3 − 3600/1801 = 1803/1801, s1x = 3 − 1800/1801, sxx = 5 − 900/1801.
    const pivot = (3 - 1800 / 1801) / (3 - 3600 / 1801);
    expect(fit.pivot.x).toBeCloseTo(pivot, 10);
    expect(shared?.lift).toBeCloseTo((60 - (1800 * 60) / 1801) / (1803 / 1801), 10);
  });

  test('is carried through where the points have no uncertainty of their own', () => {
    const fit = mustFit(atHours([0, 1, 2.1], [7, 7, 7], 0));
    expect(fit.shared[0]?.lift).toBeCloseTo(7, 12);
    expect(fit.scatter).toBeCloseTo(0.1 / Math.sqrt(6), 12);
  });
});

/** The textbook sums, not taken about the centre. */
function closedForm(points: readonly { x: number; y: number; own: number }[]) {
  type Point = (typeof points)[number];
  const total = (term: (point: Point) => number): number =>
    points.reduce((sum, point) => sum + term(point) / point.own ** 2, 0);
  const s = total(() => 1);
  const [sx, sy, sxx, sxy] = [
    total((p) => p.x),
    total((p) => p.y),
    total((p) => p.x ** 2),
    total((p) => p.x * p.y),
  ];
  const determinant = s * sxx - sx * sx;
  const slope = (s * sxy - sx * sy) / determinant;
  const intercept = (sxx * sy - sx * sxy) / determinant;
  const variance = total((p) => (p.y - intercept - slope * p.x) ** 2) / (points.length - 2);
  return {
    slope,
    intercept,
    slopeUncertainty: Math.sqrt((s * variance) / determinant),
    interceptUncertainty: Math.sqrt((sxx * variance) / determinant),
  };
}

describe('too little for a line', () => {
  test('two points have a line, and nothing to judge it by', () => {
    const fit = mustFit([
      { x: 1, y: 1 },
      { x: 3, y: 5 },
    ]);
    expect(fit).toMatchObject({ slope: 2, dof: 0, scatter: null, own: null });
    expect(valueAt(fit, 0)).toBe(-1);
  });

  test('nor has the line of two points whose own uncertainties are known', () => {
    const fit = mustFit([
      { x: 1, y: 1, own: 0.1 },
      { x: 3, y: 5, own: 0.2 },
    ]);
    expect(fit).toMatchObject({ dof: 0, scatter: null, own: null });
    expect([fit.slope, valueAt(fit, 0)]).toEqual([expect.closeTo(2, 12), expect.closeTo(-1, 12)]);
  });

  test.each([
    ['no points', []],
    ['one point', [{ x: 1, y: 1 }]],
    ['readings all taken at one time', [0.1, 0.7, 0.3].map((own) => ({ x: 11840.1, y: own, own }))],
  ])('%s make no line', (_, points) => {
    expect(fitLine(points)).toBeNull();
  });

  test.each([
    [{ x: Number.NaN, y: 1 }, '(NaN, 1) is no point of a line'],
    [{ x: 1, y: Number.POSITIVE_INFINITY }, '(1, Infinity) is no point of a line'],
    [{ x: 1, y: 1, own: -1 }, '-1 is no uncertainty'],
    [{ x: 1, y: 1, own: Number.POSITIVE_INFINITY }, 'Infinity is no uncertainty'],
    [{ x: 1, y: 1, own: 1, shared: new Map([['mic', Number.NaN]]) }, 'NaN is no uncertainty of mic'],
  ])('%o is refused', (point, words) => {
    expect(() => fitLine([{ x: 0, y: 0 }, { x: 2, y: 2 }, point])).toThrow(new RangeError(words));
  });
});
