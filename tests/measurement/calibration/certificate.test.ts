import { describe, expect, it } from 'vitest';
import { certifiedError, inForce } from '../../../src/measurement/calibration/certificate.ts';
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
