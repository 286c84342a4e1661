import fc from 'fast-check';
import { expect, it } from 'vitest';
import { squareRoot } from '../../src/formula/square-root.ts';
import { type Fraction, fraction, toDecimal } from '../../src/quantity/fraction.ts';
import { runs } from '../propertyRuns.ts';

/** √2, √3, √5 and √10: the decimal expansions of any published table (OEIS A002193, A002163 and the like; from memory). */
it.each([
  [2n, '1.414213562373095048801688724210'],
  [3n, '1.732050807568877293527446341506'],
  [5n, '2.236067977499789696409173668731'],
  [10n, '3.162277660168379331998893544433'],
])('the root of %s agrees with the tables to thirty decimals', (square, table) => {
  expect(toDecimal(squareRoot(fraction(square)), 30)).toBe(table);
});

it('the root of a square is exact, in lowest terms or not', () => {
  const part = fc.bigInt({ min: 0n, max: 10n ** 40n });
  const below = fc.bigInt({ min: 1n, max: 10n ** 40n });
  fc.assert(
    fc.property(part, below, below, (n, d, factor) => {
      const root = squareRoot({ n: n * n * factor, d: d * d * factor });
      expect(root.n * d).toBe(n * root.d);
    }),
    runs(2000),
  );
});

it('any other root is right to thirty digits, however large or small', () => {
  const part = fc
    .integer({ min: 0, max: 300 })
    .chain((digits) => fc.bigInt({ min: 1n, max: 10n ** BigInt(digits) }));
  fc.assert(
    fc.property(part, part, (n, d) => {
      const root = squareRoot({ n, d });
      // Half a unit in the thirtieth digit is at most 5·10⁻³⁰ of the root, twice that of its square; cross-multiplied.
      const off = root.n * root.n * d - n * root.d * root.d;
      const allowed = 10n * n * root.d * root.d;
      expect((off < 0n ? -off : off) * 10n ** 30n <= allowed).toBe(true);
      expect(isNearest(root, { n, d })).toBe(true);
    }),
    runs(2000),
  );
});

/** The square lies between those of half a unit below and half a unit above the root's last digit. */
function isNearest(root: Fraction, square: Fraction): boolean {
  const fourfold = 4n * square.n * root.d * root.d;
  const [below, above] = [2n * root.n - 1n, 2n * root.n + 1n];
  return below * below * square.d <= fourfold && fourfold <= above * above * square.d;
}
