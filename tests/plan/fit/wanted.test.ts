import { expect, it } from 'vitest';
import { costOf, middleOf } from '../../../src/plan/fit/wanted.ts';
import { fraction } from '../../../src/quantity/fraction.ts';

/** 20 to 80, to lie at 60 where it can. */
const WANTED = { min: fraction(20), max: fraction(80), middle: fraction(60) };

it.each([
  ['nothing in the middle', 60, 0, 0, 0],
  ['the square of its distance in half widths', 75, 0, 0, 0.25],
  ['as much below the middle as above it', 45, 0, 0, 0.25],
  ['one at half a width', 30, 0, 0, 1],
  ['what its mean does, with both ends at the limits', 50, 30, 30, 1 / 9],
  ['more than all, with its least below', 50, 31, 0, undefined],
  ['more than all, with its greatest above', 50, 0, 31, undefined],
])('a fit costs %s', (_, mean, below, above, cost) => {
  const spread = { below: fraction(below), above: fraction(above) };
  const found = costOf(fraction(mean), spread, WANTED);
  if (cost === undefined) expect(found).toBeUndefined();
  else expect(found).toBeCloseTo(cost, 12);
});

it('costs nothing where limits leave one size alone', () => {
  const only = { min: fraction(5), max: fraction(5), middle: fraction(5) };
  expect(costOf(fraction(5), { below: fraction(0), above: fraction(0) }, only)).toBe(0);
  expect(middleOf({ min: fraction(5), max: fraction(8) })).toEqual(fraction(13, 2));
});
