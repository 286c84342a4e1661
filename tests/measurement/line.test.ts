import { describe, expect, test } from 'vitest';
import { fitLine, valueAt } from '../../src/measurement/line.ts';
import { readPoints } from './csv.ts';
import { mustFit } from './mustFit.ts';

/** Agreement to a number of significant digits. */
function expectDigits(got: number | null, value: number, digits: number): void {
  expect(Math.abs((got ?? Number.NaN) / value - 1)).toBeLessThan(10 ** -digits);
}

describe('NIST Statistical Reference Datasets, certified values', () => {
  test('Norris, a straight line of 36 points', () => {
    const fit = mustFit(readPoints('nist-strd-norris', 'x', 'y'));
    expect(fit.dof).toBe(34);
    expectDigits(fit.intercept, -0.262323073774029, 12);
    expectDigits(fit.slope, 1.00211681802045, 13);
    expectDigits(fit.interceptUncertainty, 0.232818234301152, 12);
    expectDigits(fit.slopeUncertainty, 0.429796848199937e-3, 12);
    expectDigits(fit.residualDeviation, 0.884796396144373, 12);
  });

  test('NoInt1, a line through the origin', () => {
    const fit = mustFit(readPoints('nist-strd-noint1', 'x', 'y'), true);
    expect(fit).toMatchObject({ dof: 10, intercept: 0, interceptUncertainty: 0, correlation: 0 });
    expectDigits(fit.slope, 2.07438016528926, 13);
    expectDigits(fit.slopeUncertainty, 0.165289256198347e-1, 13);
    expectDigits(fit.residualDeviation, 3.56753034006338, 13);
  });
});

// JCGM 100:2008 example H.3: the correction of a thermometer against its reading less 20 °C.
describe('JCGM 100:2008 example H.3', () => {
  const rows = readPoints('gum-h3', 't_degC', 'b_degC');
  const fit = mustFit(rows.map(({ x, y }) => ({ x: x - 20, y })));

  test('as printed', () => {
    expect(fit.intercept.toFixed(4)).toBe('-0.1712');
    expect(fit.interceptUncertainty?.toFixed(4)).toBe('0.0029');
    expect(fit.slope.toFixed(5)).toBe('0.00218');
    expect(fit.slopeUncertainty?.toFixed(5)).toBe('0.00067');
    expect(fit.correlation.toFixed(3)).toBe('-0.930');
    expect(fit.dof).toBe(9);
  });

  test('in full, worked separately', () => {
    expectDigits(fit.intercept, -0.17120379, 8);
    expectDigits(fit.slope, 0.00218269774, 8);
    expectDigits(fit.residualDeviation, 0.00349756396, 8);
    expectDigits(fit.interceptUncertainty, 0.00287759784, 8);
    expectDigits(fit.slopeUncertainty, 0.000667938773, 8);
    expectDigits(fit.correlation, -0.930429603, 8);
    expectDigits((fit.residualDeviation ?? 0) ** 2 * fit.dof, 0.000110096583109, 11);
  });
});

// Graybill & Iyer, "Regression Analysis" (1994), chapter 6; the fits were worked separately.
test.each([
  ['graybill-iyer-thermometer', 'temp', 'read', -3.13952381, 1.0302381, 0.234446325, 168],
  ['graybill-iyer-chamber', 'dial', 'temp', 198.456364, 3.02981818, 4.0450059, 11000],
])('the line of %s', (name, x, y, intercept, slope, deviation, sxx) => {
  const fit = mustFit(readPoints(name, x, y));
  expectDigits(fit.intercept, intercept, 8);
  expectDigits(fit.slope, slope, 8);
  expectDigits(fit.residualDeviation, deviation, 8);
  expect(fit.sxx).toBeCloseTo(sxx, 8);
});

describe('weights', () => {
  const WEIGHED = [
    { x: 0, y: 1, weight: 1 },
    { x: 1, y: 3, weight: 2 },
    { x: 2, y: 4, weight: 1 },
  ];

  // Sums of the normal equations by hand: S 4, Sx 4, Sy 11, Sxx 6, Sxy 14, determinant 8, Σ w r² 1/4.
  test('three weighed points agree with the normal equations by hand', () => {
    const fit = mustFit(WEIGHED);
    expect(fit.slope).toBeCloseTo(12 / 8, 14);
    expect(fit.intercept).toBeCloseTo(10 / 8, 14);
    expect(fit.slopeUncertainty).toBeCloseTo(Math.sqrt((4 * 0.25) / 8), 14);
    expect(fit.interceptUncertainty).toBeCloseTo(Math.sqrt((6 * 0.25) / 8), 14);
    expect(fit.correlation).toBeCloseTo(-4 / Math.sqrt(24), 14);
    // The mean weight is 4/3: a reading of that weight has 3/4 of the variance of one of weight 1.
    expect(fit.residualDeviation).toBeCloseTo(Math.sqrt(0.25 * 0.75), 14);
    expect(fit.residuals.map((residual) => residual.toFixed(12))).toEqual([
      '-0.250000000000',
      '0.250000000000',
      '-0.250000000000',
    ]);
  });

  test('many weighed points agree with the closed form', () => {
    const points = readPoints('gum-h3', 't_degC', 'b_degC').map((point, index) => ({
      ...point,
      weight: 1 / (0.5 + (index % 4)) ** 2,
    }));
    const fit = mustFit(points);
    const expected = closedForm(points);
    expectDigits(fit.slope, expected.slope, 9);
    expectDigits(fit.intercept, expected.intercept, 9);
    expectDigits(fit.slopeUncertainty, expected.slopeUncertainty, 8);
    expectDigits(fit.interceptUncertainty, expected.interceptUncertainty, 8);
  });

  test('through the origin the slope is Σwxy / Σwx²', () => {
    // Residuals 1, 2/3 and −2/3: Σ w r² is 21/9, with two degrees of freedom.
    const fit = mustFit(WEIGHED, true);
    expect(fit.slope).toBeCloseTo(14 / 6, 14);
    expect(valueAt(fit, 3)).toBeCloseTo(7, 14);
    expect(fit.slopeUncertainty).toBeCloseTo(Math.sqrt(21 / 9 / 2 / 6), 14);
  });

  test('equal weights of any size are no weights at all', () => {
    const plain = readPoints('graybill-iyer-chamber', 'dial', 'temp');
    const fit = mustFit(plain.map((point) => ({ ...point, weight: 4e6 })));
    const expected = mustFit(plain);
    expectDigits(fit.slope, expected.slope, 14);
    expectDigits(fit.residualDeviation, expected.residualDeviation ?? 0, 12);
    expectDigits(fit.slopeUncertainty, expected.slopeUncertainty ?? 0, 12);
  });
});

/** The textbook sums, not taken about the centre. */
function closedForm(points: readonly { x: number; y: number; weight: number }[]) {
  const total = (term: (point: { x: number; y: number; weight: number }) => number): number =>
    points.reduce((sum, point) => sum + point.weight * term(point), 0);
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
    expect(fit).toMatchObject({ slope: 2, intercept: -1, dof: 0 });
    expect([fit.residualDeviation, fit.slopeUncertainty, fit.interceptUncertainty]).toEqual([
      null,
      null,
      null,
    ]);
  });

  test.each([
    ['no points', []],
    ['one point', [{ x: 1, y: 1 }]],
    ['readings all taken at one time', [0.1, 0.7, 0.3].map((weight) => ({ x: 11840.1, y: weight, weight }))],
  ])('%s make no line', (_, points) => {
    expect(fitLine(points)).toBeNull();
  });

  test('through the origin one point is enough, unless it is the origin', () => {
    expect(fitLine([{ x: 2, y: 3 }], { throughOrigin: true })?.slope).toBe(1.5);
    expect(fitLine([{ x: 0, y: 3 }], { throughOrigin: true })).toBeNull();
  });

  test.each([
    [{ x: Number.NaN, y: 1 }],
    [{ x: 1, y: Number.POSITIVE_INFINITY }],
    [{ x: 1, y: 1, weight: 0 }],
    [{ x: 1, y: 1, weight: -1 }],
    [{ x: 1, y: 1, weight: Number.POSITIVE_INFINITY }],
  ])('%o is refused', (point) => {
    expect(() => fitLine([{ x: 0, y: 0 }, { x: 2, y: 2 }, point])).toThrow(RangeError);
  });
});
