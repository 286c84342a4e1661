import { describe, expect, test } from 'vitest';
import { judgeTorqueAndStretch, nutFactorNeeded } from '../../../src/torque/fasteners/stretchWindow.ts';
import { amount, span } from '../amounts.ts';
import { thread } from '../known.ts';

const WINDOWS = { torque: span('58 to 69 lbf ft'), stretch: span('.019 to .024 in') };

describe('58 to 69 lbf ft with .019 to .024 in (TM 9-2815-220-24 WP 0139)', () => {
  test.each([
    ['60 lbf ft', '.021 in', 'inside', 'inside', 'inside'],
    ['58 lbf ft', '.024 in', 'inside', 'inside', 'inside'],
    ['58 lbf ft', '.019 in', 'inside', 'inside', 'inside'],
    ['57 lbf ft', '.0241 in', 'below', 'above', 'replace'],
    ['69 lbf ft', '.0189 in', 'inside', 'below', 'replace'],
    ['70 lbf ft', '.010 in', 'above', 'below', 'replace'],
    ['60 lbf ft', '.018 in', 'inside', 'below', 'not yet'],
    ['50 lbf ft', '.020 in', 'below', 'inside', 'not yet'],
    ['50 lbf ft', '.010 in', 'below', 'below', 'not yet'],
    ['70 lbf ft', '.020 in', 'above', 'inside', 'beyond'],
    ['60 lbf ft', '.025 in', 'inside', 'above', 'beyond'],
    ['70 lbf ft', '.025 in', 'above', 'above', 'beyond'],
  ])('%s at %s: torque %s, stretch %s: %s', (torque, stretch, torqueSide, stretchSide, verdict) => {
    const read = { torque: amount(torque), stretch: amount(stretch) };
    expect(judgeTorqueAndStretch(WINDOWS, read)).toEqual({
      torque: torqueSide,
      stretch: stretchSide,
      verdict,
    });
  });
});

describe('whether both windows can be met by one bolt', () => {
  const bolt = thread('1/2-20');
  const long = (inches: number) => ({
    diameterM: bolt.diameterM,
    sections: [{ lengthM: inches * 0.0254, areaM2: bolt.stressAreaM2 }],
  });

  test('a 1/2-20 stud ten inches long needs K between .12 and .18, as greased studs have', () => {
    const needed = nutFactorNeeded(WINDOWS, long(10));
    // Worked by hand: F = .024 x .1600 x 30e6 / 10 = 11 519 lbf, K = 58 x 12 / (.5 x 11 519) = .121.
    expect(needed.least).toBeCloseTo(0.121, 3);
    expect(needed.greatest).toBeCloseTo(0.182, 3);
    expect(needed.contradicts).toBe(false);
  });

  test('two inches long it would need K below .04: the windows contradict each other', () => {
    expect(nutFactorNeeded(WINDOWS, long(2))).toMatchObject({ contradicts: true });
  });

  test('forty inches long it would need K above .48: the windows contradict each other', () => {
    expect(nutFactorNeeded(WINDOWS, long(40))).toMatchObject({ contradicts: true });
  });

  test('a softer stud stretches more for its load, and so needs more friction', () => {
    const soft = nutFactorNeeded(WINDOWS, { ...long(10), modulusPa: 110e9 });
    expect(soft.least).toBeGreaterThan(nutFactorNeeded(WINDOWS, long(10)).least);
  });
});
