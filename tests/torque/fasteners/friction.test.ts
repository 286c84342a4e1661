import { describe, expect, test } from 'vitest';
import {
  asScrew,
  clampLoadOfFriction,
  frictionLoadN,
  frictionTorqueNm,
  headFrictionDiameterM,
  nutFactorOfFriction,
  preloadAtYieldN,
} from '../../../src/torque/fasteners/friction.ts';
import { thread } from '../known.ts';

describe('K of an M18 x 2.5 with friction .15 in the thread and .13 under the head', () => {
  const bolt = thread('M18');
  // A head whose friction acts at 1.25 d gives the textbooks' .625 mu term.
  const friction = { thread: 0.15, head: 0.13, headDiameterM: 1.25 * bolt.diameterM };

  test('is .18343 (Jindal, Machine Design, chapter 9), with friction at the mean of outside and root', () => {
    const frictionDiameterM = (bolt.diameterM + bolt.minorDiameterM) / 2;
    const screw = { pitchM: bolt.pitchM, frictionDiameterM };
    expect(Math.abs(nutFactorOfFriction(bolt.diameterM, screw, friction) - 0.18343)).toBeLessThan(0.00001);
  });

  test('is .1830 with friction at the pitch diameter, as we take it', () => {
    expect(nutFactorOfFriction(bolt.diameterM, asScrew(bolt), friction)).toBeCloseTo(0.183, 4);
  });
});

describe('VDI 2230 preload in kN as a second-hand table prints it: 90 % of yield, friction .12, yield 640, 940, 1100 MPa', () => {
  test.each([
    ['M8x1', 640, 20.2],
    ['M8x1', 940, 29.7],
    ['M8x1', 1100, 34.7],
    ['M10x1.25', 640, 31.6],
    ['M10x1.25', 940, 46.4],
    ['M10x1.25', 1100, 54.3],
    ['M12x1.25', 640, 48.0],
    ['M12x1.25', 940, 70.5],
    ['M12x1.25', 1100, 82.5],
    ['M14x1.5', 640, 64.8],
    ['M16x1.5', 640, 87.6],
  ])('%s with yield %d MPa: %d kN within 0.3 %', (written, yieldMpa, printedKn) => {
    const preloadN = preloadAtYieldN(thread(written), yieldMpa * 1e6, 0.12);
    expect(Math.abs(preloadN / (printedKn * 1000) - 1)).toBeLessThan(0.003);
  });
});

describe('torque and load by friction', () => {
  const bolt = thread('M10x1.25');
  const friction = { thread: 0.12, head: 0.12, headDiameterM: headFrictionDiameterM(0.016, 0.011) };

  test('torque to load and load to torque undo each other', () => {
    const torqueNm = frictionTorqueNm(31.6e3, bolt, friction);
    expect(frictionLoadN(torqueNm, bolt, friction)).toBeCloseTo(31.6e3, 6);
  });

  test('the short form F (.16 P + .58 d2 mu + D mu / 2), from memory, agrees within 1 %', () => {
    const short =
      0.16 * bolt.pitchM + 0.58 * bolt.pitchDiameterM * 0.12 + 0.12 * (friction.headDiameterM / 2);
    expect(Math.abs(frictionTorqueNm(1, bolt, friction) / short - 1)).toBeLessThan(0.01);
  });

  test('more friction under the head leaves less clamp load for the same torque', () => {
    const rough = { ...friction, head: 0.2 };
    expect(frictionLoadN(50, bolt, rough)).toBeLessThan(frictionLoadN(50, bolt, friction));
  });

  test('an estimate says what it took for granted', () => {
    expect(clampLoadOfFriction(50, bolt, friction).assumptions).toEqual([
      'friction 0.12 in the thread, acting at its pitch diameter',
      'friction 0.12 under the head, acting at 13.5 mm diameter',
      'friction is the same in every bolt: its scatter is not in this figure',
    ]);
  });
});
