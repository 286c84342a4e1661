import { expect, it } from 'vitest';
import { uncertaintyOf } from '../../../src/checks/value/routes.ts';
import type { Value } from '../../../src/measurement/value.ts';
import { parseDecimal } from '../../../src/quantity/fraction.ts';

const known = (amount: string, u: number): Value => ({
  amount: parseDecimal(amount),
  terms: new Map([['mic', { u, dof: Number.POSITIVE_INFINITY }]]),
});

// JCGM 100, table G.2: with its degrees of freedom without end, 95 % lie within 1.960 standard uncertainties.
it.each([
  ['the least', 0.3, 0.2],
  ['the greatest', 0.2, 0.3],
])(
  'of the ends of what was measured %s counts for both where it is the less certain',
  (_, least, greatest) => {
    const mean = known('2', 0.1);
    const found = uncertaintyOf({ least: known('1', least), mean, greatest: known('3', greatest) });
    expect(found.u).toBe(0.3);
    expect(found.expanded).toBeCloseTo(0.588, 3);
  },
);

it('of ends that are equally certain the least stands for both', () => {
  const [least, greatest] = [known('1', 0.2), known('3', 0.2)];
  expect(uncertaintyOf({ least, mean: known('2', 0.1), greatest }).worse).toBe(least);
});
