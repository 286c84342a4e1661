import { describe, expect, test } from 'vitest';
import { fraction, parseDecimal, toDecimal, toNumber } from '../../../src/quantity/fraction.ts';
import { fromBase, toBase, unitNamed } from '../../../src/quantity/units.ts';
import {
  AIRCRAFT_THREADS,
  type AircraftTorque,
  aircraftTorqueOf,
  judgeAircraftTorque,
  type NutType,
} from '../../../src/torque/fasteners/aircraftTorques.ts';
import { thread } from '../known.ts';

const lbfIn = (written: string) => toBase(parseDecimal(written), unitNamed('lbf in'));

function row(size: string, nut: NutType): AircraftTorque {
  const found = aircraftTorqueOf(thread(size), nut);
  if (found === undefined) throw new Error(`no row for ${size}`);
  return found;
}

describe('FAA AC 43.13-1B, table 7-1', () => {
  test('every thread of the table reads as a thread and has its row', () => {
    expect(AIRCRAFT_THREADS).toHaveLength(23);
    for (const size of AIRCRAFT_THREADS) expect(aircraftTorqueOf(thread(size), 'tension')).toBeDefined();
  });

  // Tension and shear, as printed: recommended, then the most that is allowed; in lbf in.
  test.each([
    ['8-36', [12, 15, 20], [7, 9, 12]],
    ['10-32', [20, 25, 40], [12, 15, 25]],
    ['1/4-28', [50, 70, 100], [30, 40, 60]],
    ['5/16-24', [100, 140, 225], [60, 85, 140]],
    ['3/8-24', [160, 190, 390], [95, 110, 240]],
    ['7/16-20', [450, 500, 840], [270, 300, 500]],
    ['1/2-20', [480, 690, 1100], [290, 410, 660]],
    ['9/16-18', [800, 1000, 1600], [480, 600, 960]],
    ['5/8-18', [1100, 1300, 2400], [600, 780, 1400]],
    ['3/4-16', [2300, 2500, 5000], [1300, 1500, 3000]],
    ['7/8-14', [2500, 3000, 7000], [1500, 1800, 4200]],
    ['1-14', [3700, 5500, 10000], [2200, 3300, 6000]],
    ['8-32', [12, 15, 20], [7, 9, 12]],
    ['10-24', [20, 25, 35], [12, 15, 21]],
    ['1/4-20', [40, 50, 75], [25, 30, 45]],
    ['5/16-18', [80, 90, 160], [48, 55, 100]],
    ['3/8-16', [160, 185, 275], [95, 100, 170]],
    ['7/16-14', [235, 255, 475], [140, 155, 280]],
    ['1/2-13', [400, 480, 880], [240, 290, 520]],
    ['9/16-12', [500, 700, 1100], [300, 420, 650]],
    ['5/8-11', [700, 900, 1500], [420, 540, 900]],
    ['3/4-10', [1150, 1600, 2500], [700, 950, 1500]],
    ['7/8-9', [2200, 3000, 4600], [1300, 1800, 2700]],
  ] as const)('%s as printed', (size, tension, shear) => {
    const printed = (nut: NutType): readonly number[] => {
      const { recommended, maximum } = row(size, nut);
      return [recommended.least, recommended.greatest, maximum].map((each) =>
        Number(toDecimal(fromBase(each, unitNamed('lbf in')), 9)),
      );
    };
    expect([printed('tension'), printed('shear')]).toEqual([tension, shear]);
  });

  test('in every row the figures rise and a shear nut takes 54 to 65 % of a tension nut', () => {
    for (const size of AIRCRAFT_THREADS) {
      const [tension, shear] = [row(size, 'tension'), row(size, 'shear')].map(({ recommended, maximum }) =>
        [recommended.least, recommended.greatest, maximum].map(toNumber),
      );
      for (const figures of [tension, shear])
        expect(figures).toEqual([...(figures ?? [])].sort((a, b) => a - b));
      for (const [index, figure] of (shear ?? []).entries()) {
        const share = figure / (tension?.[index] ?? Number.NaN);
        expect(share).toBeGreaterThan(0.53);
        expect(share).toBeLessThan(0.65);
      }
    }
  });

  test.each([
    ['1/4-28', 'tension', '49.9', 'below recommended'],
    ['1/4-28', 'tension', '50', 'recommended'],
    ['1/4-28', 'tension', '70', 'recommended'],
    ['1/4-28', 'tension', '70.1', 'above recommended'],
    ['1/4-28', 'tension', '100', 'above recommended'],
    ['1/4-28', 'tension', '100.1', 'above maximum'],
    ['1/4-28', 'shear', '61', 'above maximum'],
    ['9/16-12', 'tension', '1100', 'above recommended'],
    ['1-14', 'shear', '3300', 'recommended'],
  ] as const)('%s with a %s nut at %s lbf in is %s', (size, nut, reached, verdict) => {
    expect(judgeAircraftTorque(lbfIn(reached), row(size, nut))).toBe(verdict);
  });

  test('a lbf ft figure exactly on a lbf in limit is inside it', () => {
    const reached = toBase(fraction(100, 12), unitNamed('lbf ft'));
    expect(judgeAircraftTorque(reached, row('1/4-28', 'tension'))).toBe('above recommended');
  });

  test('with 8.9 lbf in of run-on a shear 1/4-28 takes 38.9 to 48.9 (a light aircraft manual)', () => {
    const judge = (reached: string) =>
      judgeAircraftTorque(lbfIn(reached), row('1/4-28', 'shear'), lbfIn('8.9'));
    expect([judge('38.8'), judge('38.9'), judge('48.9'), judge('49')]).toEqual([
      'below recommended',
      'recommended',
      'recommended',
      'above recommended',
    ]);
  });

  test('a thread the table leaves out has no row', () => {
    expect(aircraftTorqueOf(thread('1-12'), 'tension')).toBeUndefined();
    expect(aircraftTorqueOf(thread('M6'), 'tension')).toBeUndefined();
  });
});
