import { describe, expect, test } from 'vitest';
import { twoSidedT } from '../../src/measurement/distributions/studentT.ts';
import type { LineFit } from '../../src/measurement/line.ts';
import {
  confidenceInterval,
  type Interval,
  inversePrediction,
  predictionInterval,
} from '../../src/measurement/linePrediction.ts';
import { readPoints } from './csv.ts';
import { mustFit } from './mustFit.ts';

// Graybill & Iyer, "Regression Analysis" (1994), chapter 6.
const thermometer = mustFit(readPoints('graybill-iyer-thermometer', 'temp', 'read'));
const chamber = mustFit(readPoints('graybill-iyer-chamber', 'dial', 'temp'));
const arsenic = mustFit(readPoints('graybill-iyer-arsenic', 'actual', 'measured'));
const norris = mustFit(readPoints('nist-strd-norris', 'x', 'y'));

function expectInterval(interval: Interval | null, lower: number, upper: number, decimals: number): void {
  expect(interval?.lower).toBeCloseTo(lower, decimals);
  expect(interval?.upper).toBeCloseTo(upper, decimals);
}

describe('intervals of the line and of a new reading at 95 % (worked separately)', () => {
  test.each([
    [103, 102.975, [102.772177, 103.177823], [102.366532, 103.583468]],
    [110, 110.186667, [109.816365, 110.556969], [109.503863, 110.86947]],
    [114, 114.307619, [113.780205, 114.835033], [113.528349, 115.086889]],
  ])('the thermometer at %d', (x, value, [low = 0, high = 0], [lowest = 0, highest = 0]) => {
    const line = confidenceInterval(thermometer, x);
    expect(line.value).toBeCloseTo(value, 6);
    expectInterval(line.interval, low, high, 6);
    expectInterval(predictionInterval(thermometer, x).interval, lowest, highest, 6);
  });

  test.each([
    [500, 500.796085936, 0.307889465, 1.824291882],
    [1200, 1202.277858551, 0.744950536, 1.946328916],
  ])('the reference set Norris at %d', (x, value, confidence, prediction) => {
    expectInterval(confidenceInterval(norris, x).interval, value - confidence, value + confidence, 8);
    expectInterval(predictionInterval(norris, x).interval, value - prediction, value + prediction, 8);
  });
});

// JCGM 100:2008 example H.3: the published correction at 30 °C is −0.1494 °C with an uncertainty of 0.0041 °C.
test('a thermometer calibrated from 21 to 27 °C is carried on to 30 °C', () => {
  const fit = mustFit(readPoints('gum-h3', 't_degC', 'b_degC'));
  const line = confidenceInterval(fit, 30);
  expect(line.value.toFixed(4)).toBe('-0.1494');
  expect(line.u?.toFixed(4)).toBe('0.0041');
  expect(line.value).toBeCloseTo(-0.149376813, 9);
  expect(line.u).toBeCloseTo(0.00413859575, 10);
  expect(predictionInterval(fit, 30).u).toBeCloseTo(0.00541857255, 10);
});

describe('the x at which a line reaches a y', () => {
  // Published figures in the titles, those in full worked separately.
  test.each([
    ['chamber p. 433, fixed limit, 66.5 (65.07, 68.03)', chamber, 400, 0.99, 66.520043, 65.070894, 68.025832],
    ['arsenic, fixed limit, (2.8724, 2.9898)', arsenic, 3, 0.9, 2.931449, 2.872401, 2.989794],
  ] as const)('%s', (_, fit, limit, confidence, x, lower, upper) => {
    const found = inversePrediction(fit, limit, confidence);
    expect(found.reason).toBeNull();
    expect(found.x).toBeCloseTo(x, 6);
    expectInterval(found.interval, lower, upper, 6);
  });

  test('at its ends the interval of the line touches the limit', () => {
    const { interval } = inversePrediction(chamber, 400, 0.99);
    expect(confidenceInterval(chamber, interval?.lower ?? 0, 0.99).interval?.upper).toBeCloseTo(400, 9);
    expect(confidenceInterval(chamber, interval?.upper ?? 0, 0.99).interval?.lower).toBeCloseTo(400, 9);
  });
});

describe('no interval is named where none can be', () => {
  const scattered = mustFit([1, 3, 0, 2, 1.9].map((y, x) => ({ x, y })));

  test('a slope that cannot be told from zero', () => {
    const found = inversePrediction(scattered, 10);
    expect(found).toMatchObject({ interval: null, reason: 'slope not significant' });
    expect(found.x).toBeGreaterThan(50);
    expect(found.g).toBeGreaterThan(1);
  });

  test('a slope that is only just smaller than its half-width', () => {
    // Four points a unit apart, closer to their line than they are known: t 4.3027, Sxx 5, so the half-width is 1.9242.
    const at = (slope: number) =>
      inversePrediction(mustFit([0, 1, 2, 3].map((x) => ({ x, y: slope * x, own: 1 }))), 50);
    const [flat, steep] = [at(1.7), at(1.93)];
    expect(flat).toMatchObject({ interval: null, reason: 'slope not significant' });
    expect(flat.g).toBeCloseTo((1.9242 / 1.7) ** 2, 3);
    expect(steep.reason).toBeNull();
    expect(steep.interval).not.toBeNull();
  });

  test('g reaches one where the slope is just as large as its half-width', () => {
    const slopeInHalfWidths = (confidence: number): number =>
      1 / Math.sqrt(inversePrediction(chamber, 400, confidence).g ?? Number.NaN);
    expect(slopeInHalfWidths(0.95)).toBeCloseTo(
      3.02981818 / (2.262157163 * (4.0450059 / Math.sqrt(11000))),
      5,
    );
  });

  test('a slope that is its half-width to the last digit', () => {
    // A line that all its readings turn alike: 1.96 is its slope, and 1.96 times an uncertainty of 1 its half-width.
    const factor = twoSidedT(0.95, Number.POSITIVE_INFINITY);
    const shared = [{ column: [], lift: 0, turn: 1 }];
    const fit: LineFit = { slope: factor, pivot: { x: 0, y: 0 }, dof: 3, scatter: 1, own: [], shared };
    expect(inversePrediction(fit, 2 * factor)).toEqual({
      x: 2,
      interval: null,
      g: 1,
      reason: 'slope not significant',
    });
  });

  test('a level line', () => {
    const level = mustFit([1, 2, 1].map((y, x) => ({ x, y })));
    expect(inversePrediction(level, 10)).toMatchObject({
      x: null,
      interval: null,
      g: Number.POSITIVE_INFINITY,
      reason: 'slope not significant',
    });
  });

  const two: LineFit = mustFit([
    { x: 0, y: 0 },
    { x: 100, y: 1 },
  ]);

  test('two points', () => {
    const found = inversePrediction(two, 2);
    expect(found.x).toBeCloseTo(200, 10);
    expect(found).toMatchObject({ interval: null, g: null, reason: 'no degrees of freedom' });
  });

  test('two points have no interval anywhere on their line', () => {
    expect(confidenceInterval(two, 50)).toEqual({ value: 0.5, u: null, interval: null });
    expect(predictionInterval(two, 50)).toEqual({ value: 0.5, u: null, interval: null });
  });
});

test('a line on which all readings lie is reached at one place', () => {
  const line = mustFit([0, 1, 2, 3].map((x) => ({ x, y: 2 * x })));
  const { x, interval } = inversePrediction(line, 10);
  expect([x, interval]).toEqual([5, { lower: 5, upper: 5 }]);
});
