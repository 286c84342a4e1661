import { describe, expect, test } from 'vitest';
import { fraction, parseDecimal, toNumber } from '../../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../../src/quantity/units.ts';
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
