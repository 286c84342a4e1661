import { describe, expect, it } from 'vitest';
import { formatLimit } from '../../src/checks/findings/readings.ts';
import { parseDecimal } from '../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../src/quantity/units.ts';

describe('a limit as printed beside readings', () => {
  it.each([
    ['0.002', 'in', 'in', 0, '0.002'],
    ['0.0038', 'in', 'in', 4, '0.0038'],
    ['0.00025', 'in', 'in', 2, '0.00025'],
    ['0.05', 'mm', 'in', 0, '0.00197'],
    ['0.05', 'mm', 'in', 4, '0.001969'],
    ['40', 'psi', 'psi', 1, '40.0'],
  ])('%s %s shows in %s beside %i decimals as %s', (text, of, shown, decimals, expected) => {
    const amount = toBase(parseDecimal(text), unitNamed(of));
    expect(formatLimit(amount, unitNamed(shown), decimals)).toBe(expected);
  });
});
