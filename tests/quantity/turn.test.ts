import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { absolute, compare, equals, fraction, parseDecimal, subtract } from '../../src/quantity/fraction.ts';
import { CYCLES, nearestTurn } from '../../src/quantity/turn.ts';
import { runs } from '../propertyRuns.ts';

const CYCLE = fraction(720);
const angle = fc.integer({ min: -20_000, max: 20_000 }).map((tenths) => fraction(tenths, 10));

describe('an angle that comes round again', () => {
  it('does so after one turn of a two-stroke engine, and after two of a four-stroke engine', () => {
    expect(CYCLES).toEqual([360, 720]);
  });

  it.each([
    ['719', '0', '-1'],
    ['1', '719', '721'],
    ['-5', '712', '715'],
    ['355', '0', '355'],
    ['370', '0', '-350'],
  ])('%s nearest %s is %s', (amount, to, expected) => {
    expect(equals(nearestTurn(parseDecimal(amount), parseDecimal(to), CYCLE), parseDecimal(expected))).toBe(
      true,
    );
  });

  it('is moved by whole cycles, to no more than half a cycle away', () => {
    fc.assert(
      fc.property(angle, angle, (amount, to) => {
        const near = nearestTurn(amount, to, CYCLE);
        expect(compare(absolute(subtract(near, to)), fraction(360))).toBeLessThanOrEqual(0);
        const moved = subtract(near, amount);
        expect(moved.n % (720n * moved.d)).toBe(0n);
      }),
      runs(500),
    );
  });

  it('stays where its measure does not come round', () => {
    expect(nearestTurn(fraction(719), fraction(0), undefined)).toEqual(fraction(719));
  });
});
