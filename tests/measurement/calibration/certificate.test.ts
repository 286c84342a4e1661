import { describe, expect, it } from 'vitest';
import {
  certifiedError,
  certifiedErrors,
  certifiedSpan,
  inForce,
  worstError,
} from '../../../src/measurement/calibration/certificate.ts';
import { shownBeyond } from '../../../src/measurement/calibration/knownError.ts';
import { type Fraction, fraction, toNumber } from '../../../src/quantity/fraction.ts';

type Pair = readonly [at: number, left: number | undefined];

const points = (pairs: readonly Pair[]) =>
  pairs.map(([at, left]) => ({
    at: fraction(at),
    asFound: undefined,
    asLeft: left === undefined ? undefined : fraction(left),
  }));

const certificate = (date: string, ...pairs: readonly Pair[]) => ({
  date,
  due: undefined,
  by: undefined,
  number: undefined,
  points: points(pairs),
  uncertainty: undefined,
});

describe('the errors of a certificate', () => {
  const of = certificate('2026-01-10', [0, 0], [50, 4], [75, undefined], [100, -2]);
  const at = (amount: Fraction): number | undefined => {
    const error = certifiedError(of, amount);
    return error && toNumber(error);
  };

  it.each([
    ['stand as stated at a point', fraction(50), 4],
    ['and at the first', fraction(0), 0],
    ['and at the last', fraction(100), -2],
    ['lie on a straight line between two', fraction(25), 2],
    ['pass over a point of which nothing is said as left', fraction(75), 1],
    ['are not known below the first', fraction(-1), undefined],
    ['are not known beyond the last', fraction(101), undefined],
  ])('%s', (_, amount, expected) => {
    expect(at(amount)).toEqual(expected);
  });
});

describe('of two certificates', () => {
  const all = [certificate('2025-01-10'), certificate('2026-01-10')];

  it.each([
    ['none counts before the first', '2025-01-09', undefined, '2025-01-10'],
    ['the first counts from its day', '2025-01-10', '2025-01-10', '2026-01-10'],
    ['the last counts from its day, and on', '2026-01-10', '2026-01-10', undefined],
  ])('%s', (_, day, date, next) => {
    const found = inForce(all, day);
    expect([found.certificate?.date, found.next]).toEqual([date, next]);
  });
});

describe('what is known of an instrument by a certificate', () => {
  const surely = { uncertainty: fraction(1), k: 2 };
  const first = { ...certificate('2025-01-10', [0, 2], [100, 4]), uncertainty: surely };
  const second = { ...certificate('2026-01-10', [0, -6], [100, -6]), uncertainty: surely };
  const unsure = certificate('2026-01-10', [0, -6], [100, -6]);

  it('reaches from its first point with a figure as left to its last', () => {
    expect(
      certifiedSpan(certificate('2026-01-10', [10, undefined], [20, 1], [25, 1], [30, 1], [40, undefined])),
    ).toEqual({
      from: fraction(20),
      to: fraction(30),
    });
    expect(certifiedSpan(certificate('2026-01-10', [10, undefined]))).toBeUndefined();
  });

  it.each([
    ['nothing before its day', [first, second], '2025-01-09', 50, 0],
    ['the error of its day, and on', [first, second], '2025-01-10', 50, 3],
    ['the same until the day of the next', [first, second], '2026-01-09', 50, 3],
    ['then that of the next', [first, second], '2026-01-10', 50, -6],
    ['nothing beyond its points', [first, second], '2026-01-10', 101, 0],
    ['nothing where it does not say how surely', [first, unsure], '2026-01-10', 50, 0],
  ])('a reading shows beyond the truth %s', (_, all, day, amount, expected) => {
    expect(toNumber(shownBeyond(certifiedErrors(all), fraction(amount), day))).toBe(expected);
  });

  it('two known errors of one day add up', () => {
    expect(
      toNumber(
        shownBeyond(certifiedErrors([first]).concat(certifiedErrors([second])), fraction(50), '2026-02-01'),
      ),
    ).toBe(-3);
  });

  it('the largest error is that of the point that is off most, to either side', () => {
    const both = {
      ...first,
      points: [
        { at: fraction(0), asFound: fraction(-9), asLeft: fraction(1) },
        { at: fraction(50), asFound: fraction(3), asLeft: undefined },
        { at: fraction(100), asFound: undefined, asLeft: fraction(-2) },
      ],
    };
    expect(worstError(both, 'asFound')).toEqual(fraction(9));
    expect(worstError(both, 'asLeft')).toEqual(fraction(2));
    expect(worstError(certificate('2026-01-10', [0, undefined]), 'asLeft')).toBeUndefined();
  });
});
