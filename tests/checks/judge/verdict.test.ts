import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Bands,
  decidingLimits,
  decidingOrder,
  type SideLimit,
} from '../../../src/checks/judge/sideLimit.ts';
import {
  distanceBeyond,
  type Judged,
  judge,
  judgeTest,
  passedLimits,
  sideAcross,
  type Verdict,
} from '../../../src/checks/judge/verdict.ts';
import { startOfFile } from '../../../src/diagnostic/place.ts';
import type { DecisionRule } from '../../../src/documents/engine/shop.ts';
import type { BandName } from '../../../src/documents/limits/bands.ts';
import { fraction, toNumber } from '../../../src/quantity/fraction.ts';
import { runs } from '../../propertyRuns.ts';

const KNOWN = Number.POSITIVE_INFINITY;

const limit = (amount: number | undefined, band: BandName): SideLimit | undefined =>
  amount === undefined
    ? undefined
    : { amount: fraction(amount), written: String(amount), band, place: startOfFile('l.yaml') };

type Sides = readonly [number | undefined, number | undefined];

const bandsOf = (stated: Readonly<Partial<Record<BandName, Sides>>>): Bands =>
  Object.fromEntries(
    (['target', 'new', 'wear'] as const).flatMap((band) => {
      const sides = stated[band];
      return sides === undefined ? [] : [[band, { min: limit(sides[0], band), max: limit(sides[1], band) }]];
    }),
  );

const reading = (least: number, greatest = least, u = 0, dof = KNOWN, expanded = 1.96 * u): Judged => ({
  least: fraction(least),
  greatest: fraction(greatest),
  u,
  dof,
  expanded,
});

const NEW_FIRST = decidingOrder('rebuild', undefined);
const WEAR_FIRST = decidingOrder('teardown', undefined);

const judged = (
  value: Judged,
  stated: Readonly<Partial<Record<BandName, Sides>>>,
  order = NEW_FIRST,
  rule: DecisionRule = 'simple',
) => judge(value, bandsOf(stated), order, rule);

describe('the band that decides', () => {
  it.each([
    ['teardown', undefined, 'wear'],
    ['service', undefined, 'wear'],
    ['machined', undefined, 'new'],
    ['trial', undefined, 'new'],
    ['rebuild', undefined, 'new'],
    ['teardown', 'new', 'new'],
    ['rebuild', 'wear', 'wear'],
  ] as const)('at %s, judged by %s, is %s first', (stage, judgeBy, first) =>
    expect(decidingOrder(stage, judgeBy)[0]).toBe(first),
  );

  it('is chosen for each side by itself: what the first does not name the other decides', () => {
    const bands = bandsOf({ new: [20, 38], wear: [undefined, 50] });
    const { min, max } = decidingLimits(bands, WEAR_FIRST);
    expect([min?.band, max?.band]).toEqual(['new', 'wear']);
    const other = decidingLimits(bandsOf({ new: [20, undefined], wear: [10, 50] }), NEW_FIRST);
    expect([other.min?.band, other.max?.band]).toEqual(['new', 'wear']);
  });

  it('is never the target', () => {
    expect(decidingLimits(bandsOf({ target: [1, 2] }), NEW_FIRST)).toEqual({
      min: undefined,
      max: undefined,
    });
  });
});

const BANDS = { target: [26, 32], new: [20, 38], wear: [undefined, 50] } as const;

describe('the verdict under the simple rule', () => {
  it.each([
    ['rebuild', 30, 'ok'],
    ['rebuild', 26, 'ok'],
    ['rebuild', 32, 'ok'],
    ['rebuild', 33, 'off target'],
    ['rebuild', 25, 'off target'],
    ['rebuild', 38, 'off target'],
    ['rebuild', 20, 'off target'],
    ['rebuild', 39, 'out'],
    ['rebuild', 19, 'out'],
    ['teardown', 33, 'off target'],
    ['teardown', 38, 'off target'],
    ['teardown', 39, 'worn'],
    ['teardown', 50, 'worn'],
    ['teardown', 51, 'out'],
    ['teardown', 20, 'off target'],
    ['teardown', 19, 'out'],
  ] as const)(
    'at %s, %i against a target of 26 to 32, new 20 to 38 and wear up to 50, is %s',
    (stage, value, expected) =>
      expect(judged(reading(value), BANDS, decidingOrder(stage, undefined)).verdict).toBe(expected),
  );

  it('is never undecided, however coarse the instrument', () => {
    expect(judged(reading(38, 38, 1000), BANDS).verdict).toBe('off target');
  });

  it('looks at the least against the min and at the greatest against the max', () => {
    expect(judged(reading(19, 30), BANDS).past?.side).toBe('min');
    expect(judged(reading(30, 39), BANDS).past?.side).toBe('max');
    expect(judged(reading(20, 38), BANDS).verdict).toBe('off target');
  });

  it('says how far beyond, and of two sides the farther', () => {
    const { past } = judged(reading(10, 41), BANDS);
    expect(past && [past.side, past.limit.band, toNumber(past.by)]).toEqual(['min', 'new', 10]);
  });

  it('is null where no limit decides, and where there is only a target it is never worse than off target', () => {
    expect(judged(reading(30), {}).verdict).toBeNull();
    expect(judged(reading(30), { target: [26, 32] }).verdict).toBe('ok');
    expect(judged(reading(3000), { target: [26, 32] }).verdict).toBe('off target');
  });

  it('judged by new at teardown, what is worn is out', () => {
    expect(judged(reading(39), BANDS, decidingOrder('teardown', 'new')).verdict).toBe('out');
    expect(judged(reading(39), BANDS, decidingOrder('rebuild', 'wear')).verdict).toBe('worn');
  });

  it('with limits of new parts alone nothing is worn', () => {
    expect(judged(reading(39), { new: [20, 38] }, WEAR_FIRST).verdict).toBe('out');
  });

  it('with a wear limit alone it decides at a rebuild as well', () => {
    expect(judged(reading(51), { wear: [undefined, 50] }).verdict).toBe('out');
    expect(judged(reading(50), { wear: [undefined, 50] }).verdict).toBe('ok');
  });
});

describe('marginal', () => {
  const isMarginal = (value: number, u: number) =>
    judged(reading(value, value, u), { new: [20, 38] }).marginal;

  it('is a reading whose deciding limit lies within its expanded uncertainty, on either side of it', () => {
    expect(isMarginal(37, 1)).toBe(true);
    expect(isMarginal(39, 1)).toBe(true);
    expect(isMarginal(21, 1)).toBe(true);
    expect(isMarginal(36, 1)).toBe(false);
    expect(isMarginal(40, 1)).toBe(false);
  });

  it('is nothing without uncertainty, even on the limit', () => expect(isMarginal(38, 0)).toBe(false));

  it('does not look at the target', () => {
    expect(judged(reading(32, 32, 1), BANDS).marginal).toBe(false);
  });
});

describe('the verdict under the guarded rule (ISO 14253-1:2017)', () => {
  const guarded = (value: number, stated: Readonly<Partial<Record<BandName, Sides>>>, u = 1, dof = KNOWN) =>
    judged(reading(value, value, u, dof), stated, NEW_FIRST, 'guarded');

  /** One-sided, 95 % is proven 1.645 standard uncertainties inside, and 5 % as far outside. */
  it.each([
    [10_000 - 1646, 'ok'],
    [10_000 - 1644, 'undecided'],
    [10_000, 'undecided'],
    [10_000 + 1644, 'undecided'],
    [10_000 + 1646, 'out'],
  ] as const)('%i against a max of 10000 at u 1000 is %s', (value, expected) =>
    expect(guarded(value, { new: [undefined, 10_000] }, 1000).verdict).toBe(expected),
  );

  it.each([
    [10_000 + 1646, 'ok'],
    [10_000 + 1644, 'undecided'],
    [10_000 - 1644, 'undecided'],
    [10_000 - 1646, 'out'],
  ] as const)('%i against a min of 10000 at u 1000 is %s', (value, expected) =>
    expect(guarded(value, { new: [10_000, undefined] }, 1000).verdict).toBe(expected),
  );

  it('with few repeats more is wanted: Student’s t for finite degrees of freedom', () => {
    // t(0.95; 2) = 2.91999 against 1.64485 (JCGM 100:2008, table G.2: 2.92)
    const limit = { new: [undefined, 10_000] } as const;
    expect(guarded(10_000 - 2919, limit, 1000, 2).verdict).toBe('undecided');
    expect(guarded(10_000 - 2921, limit, 1000, 2).verdict).toBe('ok');
    expect(guarded(10_000 + 2919, limit, 1000, 2).verdict).toBe('undecided');
    expect(guarded(10_000 + 2921, limit, 1000, 2).verdict).toBe('out');
  });

  it('without uncertainty compares plainly', () => {
    expect(guarded(38, BANDS, 0).verdict).toBe('off target');
    expect(guarded(39, BANDS, 0).verdict).toBe('out');
    expect(guarded(39, BANDS, 0).probability).toBe(0);
  });

  it('nothing can be proven inside where the tolerance is under 3.92 u', () => {
    expect(guarded(0, { new: [-1959, 1959] }, 1000).verdict).toBe('undecided');
    expect(guarded(0, { new: [-1961, 1961] }, 1000).verdict).toBe('ok');
  });

  it('off target and worn are compared plainly', () => {
    expect(guarded(33, { target: [26, 32], new: [0, 100] }).verdict).toBe('off target');
    expect(
      judged(reading(39, 39, 1), { new: [20, 38], wear: [undefined, 50] }, WEAR_FIRST, 'guarded').verdict,
    ).toBe('worn');
  });

  it('gives a probability where a limit decides, and none under the simple rule', () => {
    expect(guarded(38, { new: [undefined, 38] }).probability).toBeCloseTo(0.5, 12);
    expect(judged(reading(38), BANDS).probability).toBeNull();
    expect(guarded(38, { target: [1, 2] }).probability).toBeNull();
  });

  it('calls out only what lies beyond a limit, however coarse the instrument is for the tolerance', () => {
    // ± 30 about the value at u 1000: inside with 2.4 %, and past no limit.
    const tight: Sides = [-30, 30];
    expect(guarded(0, { new: tight }, 1000).probability).toBeCloseTo(0.0239, 4);
    expect(guarded(0, { new: tight }, 1000)).toMatchObject({ verdict: 'undecided', past: undefined });
    expect(guarded(30, { new: tight }, 1000)).toMatchObject({ verdict: 'undecided', past: undefined });
    expect(guarded(31, { new: tight }, 1000)).toMatchObject({ verdict: 'out', past: { side: 'max' } });
    expect(guarded(-31, { new: tight }, 1000)).toMatchObject({ verdict: 'out', past: { side: 'min' } });
  });
});

/** From best to worst, within one set of bands. */
const WORSE: readonly (Verdict | null)[] = [null, 'ok', 'off target', 'worn', 'undecided', 'out'];

describe('moving a value towards the middle of its bands', () => {
  const bandsAround = fc
    .record({
      half: fc.integer({ min: 4, max: 1000 }),
      share: fc.integer({ min: 1, max: 4 }),
      beyond: fc.integer({ min: 0, max: 500 }),
    })
    .map(({ half, share, beyond }) => ({
      target: [-Math.floor(half / share), Math.floor(half / share)] as const,
      new: [-half, half] as const,
      wear: [-half - beyond, half + beyond] as const,
    }));

  it.each(['simple', 'guarded'] as const)('never makes the verdict worse (%s)', (rule) => {
    const cases = fc.tuple(
      bandsAround,
      fc.integer({ min: -2000, max: 2000 }),
      fc.integer({ min: 0, max: 2000 }),
      fc.constantFrom(0, 1, 20, 300),
      fc.constantFrom(1, 2, 8, KNOWN),
      fc.constantFrom(NEW_FIRST, WEAR_FIRST),
    );
    fc.assert(
      fc.property(cases, ([bands, far, by, u, dof, order]) => {
        const near = Math.sign(far) * Math.max(0, Math.abs(far) - by);
        const rank = (value: number) =>
          WORSE.indexOf(judged(reading(value, value, u, dof), bands, order, rule).verdict);
        expect(rank(near)).toBeLessThanOrEqual(rank(far));
      }),
      runs(2000),
    );
  });
});

describe('of a reading that was given as a range', () => {
  const ranged = (from: number, to: number | undefined, u = 0, expanded = 1.96 * u): Judged => ({
    ...reading(from, to ?? from, u, KNOWN, expanded),
    spans: [{ from: fraction(from), to: to === undefined ? undefined : fraction(to) }],
  });
  const at = (value: Judged, rule: DecisionRule = 'simple') =>
    judged(value, { new: [20, 38] }, NEW_FIRST, rule);

  it.each([
    [ranged(30, 38), 'ok'],
    [ranged(30, 39), 'undecided'],
    [ranged(30, undefined), 'undecided'],
    [ranged(19, 25), 'undecided'],
    [ranged(38, 39), 'out'],
    [ranged(10, 20), 'out'],
  ] as const)('%# all of it decides', (value, expected) => {
    expect(at(value).verdict).toBe(expected);
    expect(at(value, 'guarded').verdict).toBe(expected);
  });

  it('what is undecided lies past no limit', () => {
    expect(at(ranged(30, 39))).toMatchObject({ verdict: 'undecided', probability: null, past: undefined });
  });

  it('its ends are held against the limits under the guarded rule: without an upper one no max is kept', () => {
    const guarded = (value: Judged, sides: Sides) => judged(value, { new: sides }, NEW_FIRST, 'guarded');
    expect(guarded(ranged(30, 37, 1), [20, 38]).probability).toBeCloseTo(0.8413, 4);
    expect(guarded(ranged(21, 30, 1), [20, 38]).probability).toBeCloseTo(0.8413, 4);
    expect(guarded(ranged(39, undefined, 1), [undefined, 38])).toMatchObject({
      verdict: 'out',
      probability: 0,
    });
    expect(guarded(ranged(21, undefined, 1), [20, undefined]).probability).toBeCloseTo(0.8413, 4);
  });

  it('is marginal where either end lies near a limit', () => {
    const isMarginal = (from: number, to: number | undefined) => at(ranged(from, to, 1, 2)).marginal;
    expect(isMarginal(22, 36)).toBe(false);
    expect(isMarginal(21, 30)).toBe(true);
    expect(isMarginal(30, 37)).toBe(true);
    expect(isMarginal(36, undefined)).toBe(false);
    expect(isMarginal(37, undefined)).toBe(true);
  });

  it('the side is told whose limit lies inside it', () => {
    const limits = decidingLimits(bandsOf({ new: [20, 38] }), NEW_FIRST);
    expect(sideAcross(ranged(19, 25), limits)).toBe('min');
    expect(sideAcross(ranged(37, 39), limits)).toBe('max');
    expect(sideAcross(ranged(20, 38), limits)).toBeUndefined();
    expect(sideAcross(reading(0, 100), limits)).toBeUndefined();
  });
});

describe('the limits that a value lies beyond', () => {
  const limits = decidingLimits(bandsOf({ new: [20, 38] }), NEW_FIRST);
  const past = (value: Judged) => passedLimits(value, limits).map(({ side, by }) => [side, toNumber(by)]);
  const distance = (value: Judged, of = limits) => {
    const found = distanceBeyond(value, of);
    return found && toNumber(found);
  };

  it.each([
    [reading(20, 38), [], 0],
    [reading(25, 30), [], -5],
    [reading(21, 30), [], -1],
    [reading(19, 38), [['min', 1]], 1],
    [reading(20, 39), [['max', 1]], 1],
    [
      reading(10, 40),
      [
        ['min', 10],
        ['max', 2],
      ],
      10,
    ],
    [
      reading(18, 48),
      [
        ['max', 10],
        ['min', 2],
      ],
      10,
    ],
  ] as const)('%# stand the farthest first, with how far it is beyond the worst', (value, passed, far) => {
    expect(past(value)).toEqual(passed);
    expect(distance(value)).toBe(far);
  });

  it('without limits there is no distance', () =>
    expect(distance(reading(1), { min: undefined, max: undefined })).toBeUndefined());

  it('of two passed alike the verdict speaks of the min', () => {
    expect(judged(reading(10, 48), { new: [20, 38] }).past?.side).toBe('min');
    expect(judged(reading(10, 49), { new: [20, 38] }).past?.side).toBe('max');
  });
});

it('a judgement says all that is known of it', () => {
  const bands = bandsOf({ target: [26, 32], new: [20, 38] });
  expect(judge(reading(39), bands, NEW_FIRST, 'simple')).toEqual({
    verdict: 'out',
    deciding: bands.new,
    probability: null,
    marginal: false,
    past: { side: 'max', limit: bands.new?.max, by: fraction(1) },
  });
  expect(judge(reading(25), bands, NEW_FIRST, 'simple')).toEqual({
    verdict: 'off target',
    deciding: bands.new,
    probability: null,
    marginal: false,
    past: { side: 'min', limit: bands.target?.min, by: expect.toSatisfy((by) => toNumber(by) === 1) },
  });
});

it('worn is what lies beyond new on a side on which wear decides', () => {
  const stated = { new: [20, 38], wear: [undefined, 50] } as const;
  expect(judged(reading(39), stated, WEAR_FIRST).verdict).toBe('worn');
  expect(judged(reading(19), stated, WEAR_FIRST).verdict).toBe('out');
  expect(judged(reading(19), { new: [20, 38], wear: [10, undefined] }, WEAR_FIRST).verdict).toBe('worn');
  expect(judged(reading(39), { new: [20, 38], wear: [10, undefined] }, WEAR_FIRST).verdict).toBe('out');
});

it.each([
  ['passed', 1, 'ok'],
  ['failed', 0, 'out'],
] as const)('a test that was %s has no limits', (_, amount, verdict) => {
  expect(judgeTest({ least: fraction(amount) })).toEqual({
    verdict,
    deciding: { min: undefined, max: undefined },
    probability: null,
    marginal: false,
    past: undefined,
  });
});
