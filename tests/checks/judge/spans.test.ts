import { describe, expect, it } from 'vitest';
import { standing } from '../../../src/checks/judge/spans.ts';
import { fraction } from '../../../src/quantity/fraction.ts';

const at = (from: number, to: number | undefined, side: 'min' | 'max'): string =>
  standing({ from: fraction(from), to: to === undefined ? undefined : fraction(to) }, side, fraction(10));

describe('how what was read as a range lies to a limit of 10', () => {
  it.each([
    [8, 9, 'inside', 'beyond'],
    [8, 10, 'inside', 'beyond'],
    [8, 12, 'across', 'across'],
    [10, 12, 'beyond', 'inside'],
    [11, 12, 'beyond', 'inside'],
    [9, undefined, 'across', 'across'],
    [10, undefined, 'beyond', 'inside'],
    [11, undefined, 'beyond', 'inside'],
  ])('from %s to %s: of a max %s, of a min %s', (from, to, ofMax, ofMin) => {
    expect([at(from, to, 'max'), at(from, to, 'min')]).toEqual([ofMax, ofMin]);
  });

  it.each([
    [9, 'inside', 'beyond'],
    [10, 'inside', 'inside'],
    [11, 'beyond', 'inside'],
  ])('a number alone, %i: of a max %s, of a min %s', (number, ofMax, ofMin) => {
    expect([at(number, number, 'max'), at(number, number, 'min')]).toEqual([ofMax, ofMin]);
  });
});
