import fc from 'fast-check';
import { type Matrix, matrix, multiply, transpose } from 'mathjs';
import { expect, it } from 'vitest';
import { takenApart } from '../../src/measurement/sharedErrors.ts';
import { evenly } from '../evenly.ts';
import { runs } from '../propertyRuns.ts';

const SOURCES = ['a', 'b', 'c', 'd', 'e', 'f'];

/** Readings, each with what some of the sources are off by. */
const anyTerms = fc.array(fc.dictionary(fc.constantFrom(...SOURCES), evenly(-20, 20), { minKeys: 1 }), {
  minLength: 2,
  maxLength: 8,
});

const squareOf = (rows: readonly (readonly number[])[]): number[][] => {
  const errors = matrix(rows.map((row) => [...row]));
  return (multiply(errors, transpose(errors)) as Matrix).toArray() as number[][];
};

it('errors that are taken apart leave each reading its variance, and each two what they have in common', () => {
  fc.assert(
    fc.property(anyTerms, (readings) => {
      const values = readings.map(
        (terms) =>
          new Map(Object.entries(terms).map(([source, u]) => [source, { u, dof: Number.POSITIVE_INFINITY }])),
      );
      const apart = takenApart(values);
      const ours = squareOf(
        apart.map(({ own, shared }, index) => [
          ...apart.map((_, other) => (other === index ? own : 0)),
          ...SOURCES.map((source) => shared.get(source) ?? 0),
        ]),
      );
      const theirs = squareOf(readings.map((terms) => SOURCES.map((source) => terms[source] ?? 0)));
      for (const [index, row] of theirs.entries())
        for (const [other, expected] of row.entries())
          expect(Math.abs((ours[index]?.[other] ?? Number.NaN) - expected)).toBeLessThan(
            1e-9 * Math.max(1, Math.abs(expected)),
          );
      // What no other reading has is nobody else's.
      for (const { shared } of apart)
        for (const source of shared.keys())
          expect(values.filter((terms) => terms.has(source)).length).toBeGreaterThan(1);
    }),
    runs(1000),
  );
});
