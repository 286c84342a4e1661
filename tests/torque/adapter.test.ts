import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compare,
  divide,
  equals,
  type Fraction,
  fraction,
  multiply,
  parseDecimal,
  toDecimal,
} from '../../src/quantity/fraction.ts';
import { fromBase, toBase, unitNamed } from '../../src/quantity/units.ts';
import { type Adapter, wrenchRatio, wrenchSetting } from '../../src/torque/adapter.ts';

function ratioOf(wrench: string, adapter: Adapter): Fraction {
  const found = wrenchRatio(parseDecimal(wrench), adapter);
  if ('problem' in found) throw new Error(found.problem);
  return found.ratio;
}

const straight = (length: string): Adapter => ({ kind: 'straight', length: parseDecimal(length) });

describe('a straight adapter', () => {
  test.each([
    ['300', 'lbf in', '10', '4', '214', '214.286', 'TM 1-1500-204-23-9, sheet 143'],
    ['300', 'lbf ft', '18', '6', '225', '225.000', 'TM 5-3810-305-23'],
    ['100', 'lbf in', '12', '6', '66.7', '66.667', 'NAVEDTRA 14315, figures 3-44 and 3-45'],
    ['40', 'lbf ft', '12', '4', '30', '30.000', 'TM 9-2350-261-20-1, p. 2-29'],
    ['19', 'lbf ft', '22', '3', '17', '16.720', 'TM 5-3805-274-13&P'],
    ['30', 'lbf ft', '1', '.25', '24', '24.000', 'Piper PA-28RT maintenance manual, fig. 20-1'],
  ])(
    '%s %s, wrench %s, adapter %s: printed %s, exactly %s (%s)',
    (torque, unit, wrench, length, printed, exact) => {
      const wanted = toBase(parseDecimal(torque), unitNamed(unit));
      const setting = fromBase(wrenchSetting(wanted, ratioOf(wrench, straight(length))), unitNamed(unit));
      expect(toDecimal(setting, printed.split('.')[1]?.length ?? 0)).toBe(printed);
      expect(toDecimal(setting, 3)).toBe(exact);
    },
  );

  test('the printed 305 N m of TM 5-3810-305-23 is 225 lbf ft', () => {
    expect(toDecimal(toBase(fraction(225), unitNamed('lbf ft')), 0)).toBe('305');
  });

  test('the printed 23.0 N m of TM 5-3805-274-13&P comes from the rounded 17 lbf ft: exactly it is 22.7', () => {
    const exact = wrenchSetting(toBase(fraction(19), unitNamed('lbf ft')), ratioOf('22', straight('3')));
    expect(toDecimal(exact, 1)).toBe('22.7');
    expect(toDecimal(toBase(fraction(17), unitNamed('lbf ft')), 1)).toBe('23.0');
  });

  test('an inch more on an 18 in wrench is 5.3 %, though some manuals let it pass', () => {
    expect(toDecimal(multiply(fraction(100), ratioOf('18', straight('1'))), 1)).toBe('94.7');
  });
});

describe('an angled adapter', () => {
  const at = (degrees: string): Adapter => ({
    kind: 'angled',
    length: fraction(4),
    angle: parseDecimal(degrees),
  });

  test('square to the wrench changes nothing, exactly (TM 9-254, sheet 92; TM 9-2350-277-20-2)', () => {
    expect(equals(ratioOf('10', at('90')), fraction(1))).toBe(true);
    expect(equals(ratioOf('10', at('270')), fraction(1))).toBe(true);
  });

  test('straight ahead it is a straight adapter, straight back a shortening one', () => {
    expect(equals(ratioOf('10', at('0')), fraction(10, 14))).toBe(true);
    expect(equals(ratioOf('10', at('180')), fraction(10, 6))).toBe(true);
  });

  test('at 60 and at 45 degrees its length along the wrench counts', () => {
    expect(equals(ratioOf('10', at('60')), fraction(10, 12))).toBe(true);
    expect(toDecimal(ratioOf('10', at('45')), 9)).toBe((10 / (10 + 4 * Math.SQRT1_2)).toFixed(9));
  });

  test('to the left or to the right is the same', () => {
    expect(equals(ratioOf('10', at('-45')), ratioOf('10', at('45')))).toBe(true);
  });
});

test('a shortening adapter: 100 with 4 of a 12 in wrench is set to 150 (TM 55-1945-205-24-4, T L / (L - A))', () => {
  const ratio = ratioOf('12', { kind: 'shortening', length: fraction(4) });
  expect(equals(wrenchSetting(fraction(100), ratio), fraction(150))).toBe(true);
});

test('a wrench or adapter that cannot be is refused', () => {
  expect(wrenchRatio(fraction(0), straight('1'))).toEqual({ problem: 'the wrench must have a length' });
  expect(wrenchRatio(fraction(9), { kind: 'straight', length: fraction(-1) })).toEqual({
    problem: 'an adapter cannot have a length below nothing',
  });
  expect(wrenchRatio(fraction(9), straight('0'))).toEqual({ ratio: fraction(9, 9) });
  expect(wrenchRatio(fraction(4), { kind: 'shortening', length: fraction(4) })).toEqual({
    problem: 'the adapter reaches back to the hand or past it',
  });
});

test('what is set comes back as what the fastener gets, whatever the lengths, and the order of lengths holds', () => {
  const length = fc.integer({ min: 1, max: 1000 }).map((n) => fraction(n, 16));
  fc.assert(
    fc.property(length, length, length, (torque, wrench, reach) => {
      const found = wrenchRatio(wrench, { kind: 'straight', length: reach });
      if ('problem' in found) throw new Error(found.problem);
      const setting = wrenchSetting(torque, found.ratio);
      expect(equals(divide(setting, found.ratio), torque)).toBe(true);
      expect(compare(setting, torque)).toBeLessThan(0);
    }),
  );
});
