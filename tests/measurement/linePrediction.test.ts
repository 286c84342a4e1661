import { describe, expect, test } from 'vitest';
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

  test('the mean of many new readings is known as well as the line', () => {
    const line = confidenceInterval(thermometer, 103).interval;
    const many = predictionInterval(thermometer, 103, 0.95, 1e12).interval;
    expectInterval(many, line?.lower ?? 0, line?.upper ?? 0, 9);
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
    [
      'thermometer p. 431, 103.995 (103.4, 104.6)',
      thermometer,
      { readings: [104] },
      0.95,
      103.994916,
      103.404051,
      104.589459,
    ],
    [
      'thermometer, 100.1 (99.63, 100.59)',
      thermometer,
      { readings: [100] },
      0.9,
      100.112318,
      99.629403,
      100.588503,
    ],
    [
      'chamber p. 433, fixed limit, 66.5 (65.07, 68.03)',
      chamber,
      { limit: 400 },
      0.99,
      66.520043,
      65.070894,
      68.025832,
    ],
    ['arsenic, 2.9314 (2.6035, 3.2587)', arsenic, { readings: [3] }, 0.9, 2.931449, 2.603537, 3.258658],
    ['arsenic, fixed limit, (2.8724, 2.9898)', arsenic, { limit: 3 }, 0.9, 2.931449, 2.872401, 2.989794],
  ] as const)('%s', (_, fit, target, confidence, x, lower, upper) => {
    const found = inversePrediction(fit, target, confidence);
    expect(found.reason).toBeNull();
    expect(found.x).toBeCloseTo(x, 6);
    expectInterval(found.interval, lower, upper, 6);
  });

  test('the standard uncertainty of the arsenic example is 0.1929', () => {
    expect(inversePrediction(arsenic, { readings: [3] }).standardUncertainty).toBeCloseTo(0.192934, 6);
  });

  // DIN 32645: its half-width at 99 % is t times the standard uncertainty, with t 3.3554 for eight degrees of freedom.
  test('the calibration line of DIN 32645 at 3500', () => {
    const line = mustFit(readPoints('din32645', 'x', 'y'));
    const found = inversePrediction(line, { readings: [3500] }, 0.99);
    expect(found.x).toBeCloseTo(0.1054792, 7);
    expect((found.standardUncertainty ?? 0) * 3.355387331).toBeCloseTo(0.0743426, 7);
  });

  test('at its ends the interval of the line touches the limit', () => {
    const { interval } = inversePrediction(chamber, { limit: 400 }, 0.99);
    expect(confidenceInterval(chamber, interval?.lower ?? 0, 0.99).interval?.upper).toBeCloseTo(400, 9);
    expect(confidenceInterval(chamber, interval?.upper ?? 0, 0.99).interval?.lower).toBeCloseTo(400, 9);
  });

  test('several new readings add their scatter and their degrees of freedom', () => {
    const readings = [103.8, 104.1, 104.1];
    const found = inversePrediction(thermometer, { readings });
    expect(found.dof).toBe(8);
    expect(found.x).toBeCloseTo(103.994916, 6);
    const deviation = Math.sqrt((6 * 0.234446325 ** 2 + 0.06) / 8);
    const share = 1 / 3 + 1 / 8 + ((found.x ?? 0) - 103) ** 2 / 168;
    expect(found.standardUncertainty).toBeCloseTo((deviation / 1.0302381) * Math.sqrt(share), 7);
  });

  test('through the origin the limits of the slope are the limits of x', () => {
    const line = mustFit(readPoints('nist-strd-noint1', 'x', 'y'), true);
    const { interval } = inversePrediction(line, { limit: 200 });
    const half = 2.2281388519649385 * 0.0165289256198347;
    expectInterval(interval, 200 / (2.07438016528926 + half), 200 / (2.07438016528926 - half), 9);
  });
});

describe('no interval is named where none can be', () => {
  const scattered = mustFit([1, 3, 0, 2, 1.9].map((y, x) => ({ x, y })));

  test('a slope that cannot be told from zero', () => {
    const found = inversePrediction(scattered, { limit: 10 });
    expect(found).toMatchObject({ interval: null, reason: 'slope not significant' });
    expect(found.x).toBeGreaterThan(50);
    expect(found.g).toBeGreaterThan(1);
  });

  test('g reaches one where the slope is just as large as its half-width', () => {
    const slopeInHalfWidths = (confidence: number): number =>
      1 / Math.sqrt(inversePrediction(chamber, { limit: 400 }, confidence).g ?? Number.NaN);
    expect(slopeInHalfWidths(0.95)).toBeCloseTo(
      3.02981818 / (2.262157163 * (4.0450059 / Math.sqrt(11000))),
      5,
    );
  });

  test('a level line', () => {
    const level = mustFit([1, 2, 1].map((y, x) => ({ x, y })));
    expect(inversePrediction(level, { limit: 10 })).toMatchObject({
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

  test.each([{ limit: 2 }, { readings: [2] }, { readings: [1.9, 2, 2.1] }])(
    'two points, asked for %o',
    (target) => {
      const found = inversePrediction(two, target);
      expect(found.x).toBeCloseTo(200, 10);
      expect(found).toMatchObject({
        interval: null,
        g: null,
        standardUncertainty: null,
        reason: 'no degrees of freedom',
      });
    },
  );

  test('two points have no interval anywhere on their line', () => {
    expect(confidenceInterval(two, 50)).toEqual({ value: 0.5, u: null, interval: null });
    expect(predictionInterval(two, 50)).toEqual({ value: 0.5, u: null, interval: null });
  });
});
