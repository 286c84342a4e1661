import fc from 'fast-check';
import { type Matrix, matrix, multiply, std } from 'mathjs';
import { expect, it } from 'vitest';
import { welchSatterthwaite } from '../../src/measurement/conformance.ts';
import type { Instrument } from '../../src/measurement/instrument.ts';
import { readingTerms } from '../../src/measurement/readingTerms.ts';
import { standardDeviation } from '../../src/measurement/sample.ts';
import {
  addValues,
  exactly,
  scaleValue,
  standardUncertainty,
  subtractValues,
  type Value,
} from '../../src/measurement/value.ts';
import { fraction } from '../../src/quantity/fraction.ts';
import { runs } from '../propertyRuns.ts';

const size = fc.integer({ min: 1, max: 60 });

const anyInstrument = fc.record({
  maxError: size,
  resolution: size,
  repeatability: size,
  dof: fc.integer({ min: 2, max: 20 }),
});
type Figures = typeof anyInstrument extends fc.Arbitrary<infer T> ? T : never;

/** Points read with one of two instruments, each once or several times, and how each counts in what is worked out. */
const anyPoint = fc.record({
  of: fc.constantFrom(0, 1),
  readings: fc.array(fc.integer({ min: 0, max: 120 }), { minLength: 1, maxLength: 6 }),
  // Never nought: a reading that does not count has no errors.
  times: fc.constantFrom(-3, -2, -1, 1, 2, 3),
});
type PointRead = typeof anyPoint extends fc.Arbitrary<infer T> ? T : never;

const instrument = ({ maxError, resolution, repeatability, dof }: Figures, index: number): Instrument => ({
  id: `gauge ${index}`,
  type: 'bore gauge',
  maxError: { amount: fraction(maxError) },
  resolution: fraction(resolution),
  repeatability: fraction(repeatability),
  study: { name: `study ${index}`, dof },
  assumed: false,
});

function ours(figures: readonly Figures[], points: readonly PointRead[]): Value {
  const instruments = figures.map(instrument);
  return points.reduce<Value>(
    (sum, { of, readings, times }, index) => {
      const repeats =
        readings.length < 2 ? undefined : { count: readings.length, deviation: standardDeviation(readings) };
      const reading = { amount: fraction(0), id: `point ${index}`, repeats };
      const value: Value = {
        amount: fraction(0),
        terms: readingTerms(instruments[of] as Instrument, reading),
      };
      const scaled = scaleValue(value, fraction(Math.abs(times)));
      return times > 0 ? addValues(sum, scaled) : subtractValues(sum, scaled);
    },
    exactly(fraction(0)),
  );
}

/** One estimate of a variance, and the covariance that it gives the single readings. */
interface Part {
  readonly dof: number;
  readonly covariance: (a: Single, b: Single) => number;
}

interface Single {
  readonly point: number;
  readonly of: number;
  readonly at: number;
}

/** Every single reading by itself, with one covariance matrix for each estimate: nothing is a term with a name. */
function theirs(figures: readonly Figures[], points: readonly PointRead[]) {
  const singles = points.flatMap(({ of, readings }, point) =>
    readings.map((_, at): Single => ({ point, of, at })),
  );
  const shares = matrix(
    singles.map(({ point }) => (points[point]?.times ?? 0) / (points[point]?.readings.length ?? 1)),
  );
  const varianceOf = ({ covariance }: Part): number => {
    const all = matrix(singles.map((a) => singles.map((b) => covariance(a, b))));
    return multiply(multiply(shares, all) as Matrix, shares) as unknown as number;
  };
  const parts = partsOf(figures, points).map((part) => ({ dof: part.dof, variance: varianceOf(part) }));
  const variance = parts.reduce((sum, part) => sum + part.variance, 0);
  return {
    variance,
    dof: variance ** 2 / parts.reduce((sum, part) => sum + part.variance ** 2 / part.dof, 0),
  };
}

function partsOf(figures: readonly Figures[], points: readonly PointRead[]): readonly Part[] {
  const scatterOf = (index: number): number => {
    const { readings = [] } = points[index] ?? {};
    return readings.length < 2 ? 0 : Number(std(readings));
  };
  const isWider = (index: number, of: number): boolean =>
    scatterOf(index) > (figures[of]?.repeatability ?? 0);
  const isSame = (a: Single, b: Single): boolean => a.point === b.point && a.at === b.at;
  return [
    {
      dof: Number.POSITIVE_INFINITY,
      covariance: (a, b) => (a.of === b.of ? (figures[a.of]?.maxError ?? 0) ** 2 / 3 : 0),
    },
    {
      dof: Number.POSITIVE_INFINITY,
      covariance: (a, b) => (a.point === b.point ? (figures[a.of]?.resolution ?? 0) ** 2 / 12 : 0),
    },
    ...figures.map(({ dof, repeatability }, of) => ({
      dof,
      covariance: (a: Single, b: Single) =>
        a.of === of && isSame(a, b) && !isWider(a.point, of) ? repeatability ** 2 : 0,
    })),
    ...points.map(({ of, readings }, point) => ({
      dof: readings.length - 1 || 1,
      covariance: (a: Single, b: Single) =>
        a.point === point && isSame(a, b) && isWider(point, of) ? scatterOf(point) ** 2 : 0,
    })),
  ];
}

it('repeats, shared errors and degrees of freedom agree with the covariances of all single readings', {
  timeout: 300_000,
}, () => {
  fc.assert(
    fc.property(
      fc.tuple(anyInstrument, anyInstrument),
      fc.array(anyPoint, { minLength: 1, maxLength: 6 }),
      (figures, points) => {
        const value = ours(figures, points);
        const expected = theirs(figures, points);
        const u = standardUncertainty(value);
        expect(Math.abs(u ** 2 / expected.variance - 1)).toBeLessThan(1e-9);
        const dof = welchSatterthwaite([...value.terms.values()]);
        expect(Math.abs(dof / expected.dof - 1)).toBeLessThan(1e-9);
      },
    ),
    runs(1000),
  );
});
