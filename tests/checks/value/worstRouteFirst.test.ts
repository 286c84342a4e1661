import { describe, expect, it } from 'vitest';
import type { SideLimit } from '../../../src/checks/judge/sideLimit.ts';
import type { Judgement, Verdict } from '../../../src/checks/judge/verdict.ts';
import type { Route } from '../../../src/checks/value/route.ts';
import { worstOfEqual } from '../../../src/checks/value/worstRouteFirst.ts';
import { startOfFile } from '../../../src/diagnostic/place.ts';
import { fraction } from '../../../src/quantity/fraction.ts';
import { routeOf } from './routeOf.ts';

const MAX: SideLimit = { amount: fraction(10), written: '10', band: 'new', place: startOfFile('l.yaml') };

const way = (
  label: string,
  verdict: Verdict | null,
  amount: number,
  route: Partial<Route> = {},
  isLimited = true,
) => ({
  label,
  route: routeOf(route),
  amounts: { least: fraction(amount), greatest: fraction(amount) },
  judgement: {
    verdict,
    deciding: { min: undefined, max: isLimited ? MAX : undefined },
    probability: null,
    marginal: false,
    past: undefined,
  } satisfies Judgement,
});

const order = (...ways: readonly ReturnType<typeof way>[]): readonly string[] =>
  worstOfEqual(ways).map(({ label }) => label);

describe('of readings in a tie the worst comes first', () => {
  it('by its verdict', () => {
    const verdicts = ['ok', 'off target', 'worn', null, 'undecided', 'out'] as const;
    expect(order(...verdicts.map((each) => way(`${each}`, each, 5)))).toEqual([
      'out',
      'undecided',
      'null',
      'worn',
      'off target',
      'ok',
    ]);
  });

  it('of one verdict by how far it lies beyond its limit, or how near to it', () => {
    expect(order(way('near', 'out', 11), way('far', 'out', 15))).toEqual(['far', 'near']);
    expect(order(way('far inside', 'ok', 5), way('on it', 'ok', 10))).toEqual(['on it', 'far inside']);
  });

  it('without limits they stay as they are', () => {
    expect(order(way('a', null, 5, {}, false), way('b', null, 9, {}, false))).toEqual(['a', 'b']);
    expect(order(way('a', null, 5), way('b', null, 9, {}, false))).toEqual(['a', 'b']);
    expect(order(way('a', null, 5, {}, false), way('b', null, 9))).toEqual(['a', 'b']);
  });

  it.each([
    ['of a coarser instrument', { u: 2 }],
    ['of an earlier day', { takenOn: '2026-01-01' }],
  ])('one %s is in no tie with them', (_, other) => {
    expect(order(way('judged', 'ok', 5), way('other', 'out', 15, other))).toEqual(['judged', 'other']);
  });
});

describe('of what one derivation makes of readings in a tie', () => {
  const derived = (name: string): Partial<Route> => ({ name, block: undefined });

  it('the worst alone is kept', () => {
    expect(order(way('good', 'ok', 5, derived('a − b')), way('bad', 'out', 15, derived('a − b')))).toEqual([
      'bad',
    ]);
  });

  it('and of each derivation its own, however fine', () => {
    expect(
      order(
        way('a', 'ok', 5, derived('a − b')),
        way('b', 'ok', 6, { ...derived('c − d'), u: 3 }),
        way('c', 'out', 15, { ...derived('a − b'), u: 2 }),
      ),
    ).toEqual(['c', 'b']);
  });
});

it('one way alone is that way', () => {
  const alone = [way('a', 'ok', 5, { name: 'a − b', block: undefined })];
  expect(worstOfEqual(alone)).toBe(alone);
});
