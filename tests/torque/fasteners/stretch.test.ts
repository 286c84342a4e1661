import { describe, expect, test } from 'vitest';
import {
  clampLoadOfTurn,
  loadOfStretchN,
  STEEL_MODULUS_PA,
  stretchOfLoadM,
  stretchOfTurnM,
  turnOfStretchDeg,
  warmingForStretchK,
} from '../../../src/torque/fasteners/stretch.ts';
import { strength, thread } from '../known.ts';

const LBF = 4.4482216152605;
const INCH = 0.0254;
const KELVIN_IN_A_DEGF = 5 / 9;

describe('Wentzell, Machine Design, chapter 6: 24 131.5 lbf on a 3/4-10 of .334 in2, 5 in long', () => {
  const sections = [{ lengthM: 5 * INCH, areaM2: 0.334 * INCH ** 2 }];
  const stretchM = stretchOfLoadM(24131.5 * LBF, sections);

  test('6.2: stretches .01204 in and is turned 43.35 degrees', () => {
    expect(stretchM / INCH).toBeCloseTo(0.01204, 5);
    expect(turnOfStretchDeg(stretchM, thread('3/4-10').pitchM)).toBeCloseTo(43.35, 2);
  });

  test('6.2 turned round: 43.35 degrees in a joint that does not give load it to 24 131.5 lbf', () => {
    const turned = { turnDeg: 43.35, snugLoadN: 0, sections };
    const { loadN } = clampLoadOfTurn(turned, thread('3/4-10'), strength('5', '3/4-10'));
    expect(Math.abs(loadN / LBF - 24131.5)).toBeLessThan(1);
  });

  test('6.3: must be warmed 370.46 degF by the rounded stretch, 370.51 unrounded, at 6.5e-6 per degF', () => {
    const perKelvin = 6.5e-6 / KELVIN_IN_A_DEGF;
    const warmingDegF = (inches: number): number =>
      warmingForStretchK(inches * INCH, 5 * INCH, perKelvin) / KELVIN_IN_A_DEGF;
    expect(warmingDegF(0.01204)).toBeCloseTo(370.46, 2);
    expect(warmingDegF(stretchM / INCH)).toBeCloseTo(370.51, 1);
  });
});

describe('a 7/8-9 under 10 000 lbf, 5 in long (an engineering web page)', () => {
  const PA_IN_A_PSI = 6894.757293168;
  const lengthM = 5 * INCH;
  const stressPsi = (stretchM: number): number => ((stretchM / lengthM) * STEEL_MODULUS_PA) / PA_IN_A_PSI;

  test('stretches .0036 in, at 21 740 psi with the area rounded to .46 in2 as the page does', () => {
    const stretchM = stretchOfLoadM(10_000 * LBF, [{ lengthM, areaM2: 0.46 * INCH ** 2 }]);
    expect((stretchM / INCH).toFixed(4)).toBe('0.0036');
    expect(Math.round(stressPsi(stretchM) / 10) * 10).toBe(21_740);
  });

  test('and at 21 658 psi with the area by formula', () => {
    const stretchM = stretchOfLoadM(10_000 * LBF, [{ lengthM, areaM2: thread('7/8-9').stressAreaM2 }]);
    expect(stretchM / INCH).toBeCloseTo(0.00361, 5);
    expect(stressPsi(stretchM)).toBeCloseTo(21_658, -1);
  });
});

test('a shank and a thread in line stretch as their sum', () => {
  const shank = { lengthM: 0.04, areaM2: 78.5e-6 };
  const inThread = { lengthM: 0.02, areaM2: 58e-6 };
  const apart = stretchOfLoadM(30e3, [shank]) + stretchOfLoadM(30e3, [inThread]);
  expect(stretchOfLoadM(30e3, [shank, inThread])).toBeCloseTo(apart, 15);
  expect(loadOfStretchN(apart, [shank, inThread])).toBeCloseTo(30e3, 6);
});

describe('the clamp load of a turn after snug', () => {
  const bolt = thread('M10');
  const grade = strength('10.9', 'M10');
  const sections = [{ lengthM: 0.08, areaM2: bolt.stressAreaM2 }];
  const boltStiffness = (STEEL_MODULUS_PA * bolt.stressAreaM2) / 0.08;
  const yieldN = grade.yieldPa * bolt.stressAreaM2;

  test('a rigid joint puts the whole turn into stretch', () => {
    const found = clampLoadOfTurn({ turnDeg: 45, snugLoadN: 5000, sections }, bolt, grade);
    expect(found.loadN).toBeCloseTo(5000 + stretchOfTurnM(45, bolt.pitchM) * boltStiffness, 6);
    expect(found.beyondYield).toBe(false);
    expect(found.stretchM).toBeCloseTo(found.loadN / boltStiffness, 12);
    expect(found.assumptions).toContain('the clamped parts do not give: the true load is lower');
  });

  test('a joint as stiff as the bolt takes half of the turn', () => {
    const turn = { turnDeg: 45, snugLoadN: 0, sections, jointStiffnessNPerM: boltStiffness };
    const found = clampLoadOfTurn(turn, bolt, grade);
    expect(found.stretchM).toBeCloseTo(stretchOfTurnM(45, bolt.pitchM) / 2, 12);
    expect(found.loadN).toBeCloseTo((stretchOfTurnM(45, bolt.pitchM) / 2) * boltStiffness, 6);
  });

  test('exactly at the yield load is not past it, and what was taken for granted is told', () => {
    const at = {
      turnDeg: 0,
      snugLoadN: yieldN,
      sections,
      jointStiffnessNPerM: boltStiffness,
      modulusPa: 110e9,
    };
    const found = clampLoadOfTurn(at, bolt, grade);
    expect(found).toMatchObject({ loadN: yieldN, beyondYield: false });
    expect(found.assumptions).toEqual([
      'modulus 110 GPa',
      'stiffness of the clamped parts as stated',
      'the snug torque has closed the joint',
    ]);
  });

  test('past yield the load stays at the yield load and the bolt takes the rest of the turn', () => {
    const turn = { turnDeg: 180, snugLoadN: 0, sections, jointStiffnessNPerM: boltStiffness };
    const found = clampLoadOfTurn(turn, bolt, grade);
    expect(found.beyondYield).toBe(true);
    expect(found.loadN).toBeCloseTo(yieldN, 6);
    expect(found.stretchM).toBeCloseTo(stretchOfTurnM(180, bolt.pitchM) - yieldN / boltStiffness, 12);
    expect(found.assumptions.at(-1)).toBe(
      'past yield of ISO 898-1 class 10.9: the load is taken as the yield load',
    );
  });
});
