import fc from 'fast-check';
import Reference from 'fraction.js';
import { expect, it } from 'vitest';
import {
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  multiply,
  subtract,
  toDecimal,
} from '../../src/quantity/fraction.ts';
import { runs } from '../propertyRuns.ts';

const anyFraction = fc
  .tuple(fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }), fc.bigInt({ min: 1n, max: 10n ** 6n }))
  .map(([n, d]) => fraction(n, d));

const reference = ({ n, d }: Fraction): Reference => new Reference(n).div(new Reference(d));
const same = (ours: Fraction, theirs: Reference): boolean => reference(ours).equals(theirs);

it('sums, products and quotients are those of another library (fraction.js), to the last digit', () => {
  fc.assert(
    fc.property(anyFraction, anyFraction, (a, b) => {
      expect(same(add(a, b), reference(a).add(reference(b)))).toBe(true);
      expect(same(subtract(a, b), reference(a).sub(reference(b)))).toBe(true);
      expect(same(multiply(a, b), reference(a).mul(reference(b)))).toBe(true);
      if (b.n !== 0n) expect(same(divide(a, b), reference(a).div(reference(b)))).toBe(true);
      expect(Math.sign(compare(a, b))).toBe(reference(a).compare(reference(b)));
    }),
    runs(3000),
  );
});

it('decimals are rounded half away from zero, as the other library rounds', () => {
  fc.assert(
    fc.property(anyFraction, fc.integer({ min: 0, max: 9 }), (value, places) => {
      const size = reference(value).abs().round(places).toString();
      const printed = new Reference(toDecimal(value, places)).abs();
      expect(printed.equals(new Reference(size))).toBe(true);
    }),
    runs(2000),
  );
});
