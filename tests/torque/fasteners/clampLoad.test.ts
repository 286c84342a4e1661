import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clampLoadOfTorque,
  judgeAgainstProof,
  leastPreloadN,
  percentOfProof,
  proofLoadN,
  torqueForPercentOfProof,
  torqueOfClampLoadNm,
} from '../../../src/torque/fasteners/clampLoad.ts';
import {
  LUBRICATIONS,
  lubricationNamed,
  statedNutFactor,
  UNSTATED,
} from '../../../src/torque/fasteners/lubrication.ts';
import type { Thread } from '../../../src/torque/fasteners/threadForm.ts';
import { strength, thread } from '../known.ts';

const LBF = 4.4482216152605;
const INCH = 0.0254;
const LBF_IN = LBF * INCH;
const LBF_FT = LBF * 0.3048;
const KSI = 6_894_757.293168;

/** The thread with the stress area that a source prints for it. */
const withArea = (written: string, areaM2: number): Thread => ({ ...thread(written), stressAreaM2: areaM2 });

describe('Wentzell, Machine Design, chapter 6', () => {
  const threeQuarter = withArea('3/4-10 UNC', 0.334 * INCH ** 2);

  test('6.1: a 3/4-10 UNC bolt of 85 ksi proof at 85 % of it, K .2, takes 3619.73 lbf in', () => {
    const { loadN, torqueNm } = torqueForPercentOfProof(85, threeQuarter, strength('5', '3/4-10'), UNSTATED);
    expect(loadN / LBF).toBeCloseTo(24131.5, 6);
    expect(Math.abs(torqueNm / LBF_IN - 3619.73)).toBeLessThan(0.0051);
  });

  test('6.4: a 1-1/4 stud of 120 ksi proof at 90 %, K .15, carries 115 884 lbf and takes 21728.25 lbf in', () => {
    const stud = withArea('1-1/4-12', 1.073 * INCH ** 2);
    const greased = statedNutFactor(0.15, UNSTATED);
    const { loadN, torqueNm } = torqueForPercentOfProof(90, stud, strength('8', '1-1/4-12'), greased);
    expect(loadN / LBF).toBeCloseTo(115_884, 6);
    expect(torqueNm / LBF_IN).toBeCloseTo(21728.25, 2);
  });
});

describe('Jindal, Machine Design, chapter 9', () => {
  test('an M14 of 115 mm2 and 650 MPa at 75 %, K .2, takes 156.97 N m', () => {
    const made = { ...strength('8.8', 'M14'), proofPa: 650e6 };
    const found = torqueForPercentOfProof(75, withArea('M14', 115e-6), made, UNSTATED);
    expect(Math.abs(found.torqueNm - 156.97)).toBeLessThan(0.01);
    expect(found.assumptions).toEqual([
      'ISO 898-1 class 8.8, proof strength 650 MPa',
      'T = K d F with K = 0.20 (lubrication not known)',
      'one bolt may lie 35 % off either way',
    ]);
  });

  test('an M20 at 120 kN, K .18, takes 432 N m and stands at 489.8 MPa', () => {
    expect(torqueOfClampLoadNm(120e3, 0.02, statedNutFactor(0.18, UNSTATED))).toBeCloseTo(432, 9);
    const atStress = { ...strength('8.8', 'M20'), proofPa: 489.8e6 };
    expect(percentOfProof(120e3, withArea('M20', 245e-6), atStress)).toBeCloseTo(100, 2);
  });
});

test('an M12 of class 8.8 at 70 % of proof, K .2: about 34 kN and 82 N m (second-hand hand check)', () => {
  const { loadN, torqueNm } = torqueForPercentOfProof(70, thread('M12'), strength('8.8', 'M12'), UNSTATED);
  expect((loadN / 1000).toFixed(0)).toBe('34');
  expect(torqueNm.toFixed(0)).toBe('82');
});

describe("clamp load at 75 % of proof of grade 2, K .20: a fastener distributor's table", () => {
  test.each([
    ['1/4-20', 0.0318, 1312, 5.47],
    ['3/8-16', 0.0775, 3197, 20.0],
    ['1/2-13', 0.1419, 5853, 48.8],
    ['3/4-10', 0.334, 13778, 172],
  ])('%s of %d in2: %d lbf and %d lbf ft', (written, areaIn2, printedLbf, printedLbfFt) => {
    const bolt = withArea(written, areaIn2 * INCH ** 2);
    const found = torqueForPercentOfProof(75, bolt, strength('2', written), UNSTATED);
    expect(Math.abs(found.loadN / LBF - printedLbf)).toBeLessThan(0.501);
    expect(Number((found.torqueNm / LBF_FT).toPrecision(3))).toBe(printedLbfFt);
  });

  test('the table prints 5.4 lbf ft for 1/4-20: it cuts 5.47 off', () => {
    const bolt = withArea('1/4-20', 0.0318 * INCH ** 2);
    const { torqueNm } = torqueForPercentOfProof(75, bolt, strength('2', '1/4-20'), UNSTATED);
    expect(Math.floor((10 * torqueNm) / LBF_FT) / 10).toBe(5.4);
  });
});

test('VDI example: the least preload is 41.9 kN / 1.8 = 23.3 kN', () => {
  expect((leastPreloadN(41.9e3, 1.8) / 1000).toFixed(2)).toBe('23.28');
});

describe('a torque against proof', () => {
  const bolt = thread('9/16-12');
  const grade = strength('8', '9/16-12');

  test('110 lbf ft on an oiled 9/16-12 of grade 8 clamps about 13 000 lbf, 60 % of proof', () => {
    const oiled = lubricationNamed('engine oil on threads and under heads');
    const found = judgeAgainstProof(110 * LBF_FT, bolt, grade, oiled);
    expect(found.clampLoad.loadN / LBF).toBeCloseTo((110 * 12) / (0.18 * 0.5625), 6);
    expect(found.percent).toBeCloseTo(59.7, 1);
    expect(found.greatestPercent).toBeCloseTo(1.25 * found.percent, 9);
    expect(found.beyondProof).toBe(false);
    expect(found.clampLoad.assumptions).toEqual([
      'T = K d F with K = 0.18 (oiled)',
      'one bolt may lie 25 % off either way',
    ]);
  });

  test('the torque worked out for exactly 100 % is not beyond proof, a hair more is', () => {
    fc.assert(
      fc.property(fc.constantFrom(...LUBRICATIONS), (lubrication) => {
        const { torqueNm } = torqueForPercentOfProof(100, bolt, grade, lubrication);
        const beyond = (factor: number): boolean =>
          judgeAgainstProof(factor * torqueNm, bolt, grade, lubrication).beyondProof;
        expect([beyond(1), beyond(1.000001)]).toEqual([false, true]);
      }),
    );
  });

  test('load from torque and torque from load undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1000, noNaN: true }), (torqueNm) => {
        const { loadN } = clampLoadOfTorque(torqueNm, bolt.diameterM, UNSTATED);
        expect(torqueOfClampLoadNm(loadN, bolt.diameterM, UNSTATED) / torqueNm).toBeCloseTo(1, 12);
      }),
    );
  });

  test('proof load is proof strength times stress area', () => {
    expect(proofLoadN(bolt, grade) / LBF).toBeCloseTo(120e3 * (bolt.stressAreaM2 / INCH ** 2), 3);
    expect(grade.proofPa).toBeCloseTo(120 * KSI, 3);
    expect(percentOfProof(proofLoadN(bolt, grade), bolt, grade)).toBe(100);
  });
});

describe('lubrication is read from a note only when it says one thing', () => {
  test.each([
    ['engine oil on threads and under heads', 0.18],
    ['oiled', 0.18],
    ['moly paste', 0.12],
    ['molybdenum disulphide grease', 0.12],
    ['anti-seize grease', 0.12],
    ['greased', 0.18],
    ['oil and moly', 0.2],
    ['threads dry', 0.2],
    ['black, dry', 0.3],
    ['anti-seize', 0.12],
    ['cadmium plated', 0.16],
    ['zinc plated, dry', 0.2],
    ['no oil', 0.2],
    ['zinc plated, oiled', 0.2],
    ['clean and unlubricated', 0.2],
    ['', 0.2],
  ])('%j is taken as K %d', (note, nutFactor) => {
    expect(lubricationNamed(note).nutFactor).toBe(nutFactor);
  });

  // NSTS 08307, torque wrench (from memory): unlubricated 35 %, cadmium plated 30 %, lubricated 25 %.
  test.each([
    ['black, dry', 0.35],
    ['zinc plated, dry', 0.35],
    ['threads dry', 0.35],
    ['', 0.35],
    ['cadmium plated', 0.3],
    ['oiled', 0.25],
    ['anti-seize', 0.25],
    ['moly paste', 0.25],
  ])('%j scatters by %d', (note, scatter) => {
    expect(lubricationNamed(note).scatter).toBe(scatter);
  });

  test('dry says no more than dry, but it does say that', () => {
    expect(lubricationNamed('threads dry').name).toBe('dry, finish not stated');
  });

  test('what cannot be placed is called not known', () => {
    for (const note of ['no oil', 'zinc plated, oiled', '30 weight']) {
      expect(lubricationNamed(note).name).toBe('lubrication not known');
    }
  });
});
