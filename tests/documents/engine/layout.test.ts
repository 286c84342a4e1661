import fc from 'fast-check';
import { expect, it } from 'vitest';
import { comparePositions } from '../../../src/documents/engine/layout.ts';

const numeric = new Intl.Collator('en', { numeric: true });

it.each([
  ['2', '10'],
  ['1L', '1R'],
  ['piston 2', 'piston 10'],
  ['1-2', '1-10'],
])('%s comes before %s', (first, then) => {
  expect(comparePositions(first, then)).toBeLessThan(0);
  expect(comparePositions(then, first)).toBeGreaterThan(0);
});

it('names stand in the order that a library of the language gives them', () => {
  const name = fc
    .array(
      fc.oneof(
        fc.constantFrom('piston', 'rod', 'a', 'b', ' ', 'L', 'R', '-', '0', '00', 'é', 'Piston'),
        fc.nat(2000).map(String),
      ),
      { maxLength: 4 },
    )
    .map((parts) => parts.join(''));
  fc.assert(
    fc.property(name, name, (a, b) => {
      expect(Math.sign(comparePositions(a, b))).toBe(Math.sign(numeric.compare(a, b)));
    }),
    { numRuns: 20_000 },
  );
});
