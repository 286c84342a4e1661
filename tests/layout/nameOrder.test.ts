import fc from 'fast-check';
import { expect, it } from 'vitest';
import { compareNames } from '../../src/layout/nameOrder.ts';
import { runs } from '../propertyRuns.ts';

const numeric = new Intl.Collator('en', { numeric: true });

it.each([
  ['2', '10'],
  ['1L', '1R'],
  ['piston 2', 'piston 10'],
  ['1-2', '1-10'],
  ['100010010001000', '1000100010001000'],
  ['9007199254740992', '9007199254740993'],
])('%s comes before %s', (first, then) => {
  expect(compareNames(first, then)).toBeLessThan(0);
  expect(compareNames(then, first)).toBeGreaterThan(0);
});

it('names stand in the order that a library of the language gives them', () => {
  const name = fc
    .array(
      fc.oneof(
        fc.constantFrom('piston', 'rod', 'a', 'b', ' ', 'L', 'R', '-', '0', '00', 'é', 'Piston'),
        fc.nat(2000).map(String),
        fc.bigInt({ min: 0n, max: 10n ** 18n }).map(String),
      ),
      { maxLength: 5 },
    )
    .map((parts) => parts.join(''));
  fc.assert(
    fc.property(name, name, (a, b) => {
      expect(Math.sign(compareNames(a, b))).toBe(Math.sign(numeric.compare(a, b)));
    }),
    runs(20_000),
  );
});
