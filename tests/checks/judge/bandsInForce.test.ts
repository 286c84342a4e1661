import { describe, expect, it } from 'vitest';
import type { Characteristic } from '../../../src/characteristics/characteristic.ts';
import { incompleteLimits } from '../../../src/checks/judge/incompleteLimits.ts';
import type { PositionLimits } from '../../../src/checks/judge/limits.ts';
import { canBeAt, missing } from '../../../src/checks/judge/missing.ts';
import { type Bands, decidingLimits, type SideLimit } from '../../../src/checks/judge/sideLimit.ts';
import { turnedLimits } from '../../../src/checks/judge/turnedLimits.ts';
import type { Judgement, Verdict } from '../../../src/checks/judge/verdict.ts';
import { startOfFile } from '../../../src/diagnostic/place.ts';
import type { BandName } from '../../../src/documents/limits/bands.ts';
import { fraction, toNumber } from '../../../src/quantity/fraction.ts';

type Sides = readonly [number | undefined, number | undefined];
type Stated = Readonly<Partial<Record<BandName, Sides>>>;

const side = (amount: number | undefined, band: BandName): SideLimit | undefined =>
  amount === undefined
    ? undefined
    : { amount: fraction(amount), written: `${amount}`, band, place: startOfFile('l.yaml') };

const bandsOf = (stated: Stated): Bands =>
  Object.fromEntries(
    Object.entries(stated).map(([name, [min, max]]) => [
      name,
      { min: side(min, name as BandName), max: side(max, name as BandName) },
    ]),
  );

/** Of which the sides in `open` are formulas that came to nothing. */
const limitsOf = (stated: Stated, open: readonly string[] = []): PositionLimits => {
  const names = [...new Set([...Object.keys(stated), ...open.map((each) => each.split(' ')[0] ?? '')])];
  const inForce = Object.fromEntries(
    names.map((name) => {
      const [min, max] = stated[name as BandName] ?? [];
      return [
        name,
        {
          ...((min !== undefined || open.includes(`${name} min`)) && { min: {} }),
          ...((max !== undefined || open.includes(`${name} max`)) && { max: {} }),
        },
      ];
    }),
  );
  return {
    inForce: { bands: inForce } as PositionLimits['inForce'],
    bands: bandsOf(stated),
    lacking: [],
    failed: [],
    open: new Set(open),
  };
};

const shown = (limit: SideLimit | undefined): string | undefined =>
  limit && `${limit.band} ${toNumber(limit.amount)}`;

describe('the limits that decide, each side by itself', () => {
  it.each([
    ['the first band that has one', { new: [20, 38], wear: [10, 50] }, 'new 20', 'new 38'],
    [
      'a side that it does not name, from the next',
      { new: [20, undefined], wear: [10, 50] },
      'new 20',
      'wear 50',
    ],
    ['the last size where it is the tighter', { new: [20, 38], last: [25, 30] }, 'last 25', 'last 30'],
    ['the band where that is the tighter', { new: [20, 38], last: [15, 40] }, 'new 20', 'new 38'],
    ['the band where both are alike', { new: [20, 38], last: [20, 38] }, 'new 20', 'new 38'],
    ['the last size where there is no band', { last: [15, 40] }, 'last 15', 'last 40'],
    ['none by a target', { target: [1, 2] }, undefined, undefined],
  ] as const)('are %s', (_, stated: Stated, min, max) => {
    const deciding = decidingLimits(bandsOf(stated), ['new', 'wear']);
    expect([shown(deciding.min), shown(deciding.max)]).toEqual([min, max]);
  });
});

describe('a band of what comes round again', () => {
  const turned = (stated: Stated, reading: number) =>
    turnedLimits(limitsOf(stated), fraction(reading), fraction(720));
  const ends = (stated: Stated, reading: number): unknown =>
    Object.fromEntries(
      Object.entries(turned(stated, reading).bands).map(([name, { min, max }]) => [
        name,
        [shown(min), shown(max)],
      ]),
    );

  it('lies in the turn in which its middle is nearest the reading', () => {
    expect(ends({ new: [710, 730], wear: [700, 740] }, 5)).toEqual({
      new: ['new -10', 'new 10'],
      wear: ['wear -20', 'wear 20'],
    });
    expect(ends({ new: [10, 30] }, 725)).toEqual({ new: ['new 730', 'new 750'] });
    expect(ends({ new: [10, 30] }, 100)).toEqual({ new: ['new 10', 'new 30'] });
  });

  it('of one limit alone goes by that', () => {
    expect(ends({ new: [undefined, 700], target: [715, undefined] }, 10)).toEqual({
      new: [undefined, 'new -20'],
      target: ['target -5', undefined],
    });
  });

  it('keeps all else of its limits, and a band without any stays away', () => {
    const { bands: _, ...others } = turned({ new: [undefined, undefined] }, 5);
    expect(others).toEqual({ inForce: { bands: { new: {} } }, lacking: [], failed: [], open: new Set() });
    expect(turned({ new: [undefined, undefined] }, 5).bands).toEqual({});
    expect(turned({ new: [710, 730] }, 5).bands.new?.min).toEqual({
      ...side(710, 'new'),
      amount: expect.toSatisfy((amount) => toNumber(amount) === -10),
    });
  });

  it('stays as it is where nothing comes round', () => {
    const limits = limitsOf({ new: [710, 730] });
    expect(turnedLimits(limits, fraction(5), undefined)).toBe(limits);
  });
});

describe('a limit that could not be worked out', () => {
  const past = { side: 'max', limit: side(38, 'new') as SideLimit, by: fraction(1) } as const;
  const judgement = (verdict: Verdict): Judgement => ({
    verdict,
    deciding: decidingLimits(bandsOf({ wear: [undefined, 50] }), ['new', 'wear']),
    probability: 0.7,
    marginal: true,
    past,
  });
  const withOpen = (verdict: Verdict, open: readonly string[], stated: Stated = { wear: [10, 50] }) =>
    incompleteLimits(judgement(verdict), limitsOf(stated, open), ['new', 'wear']);

  it.each(['ok', 'off target', 'worn'] as const)('takes the verdict of what was %s', (verdict) => {
    expect(withOpen(verdict, ['new max'])).toEqual({ ...judgement(verdict), verdict: null, past: undefined });
  });

  it.each([
    ['of the other side as well', ['new min'], { wear: [10, 50] }],
    ['of a farther band that alone names the side', ['wear max'], { new: [20, undefined] }],
  ] as const)('%s', (_, open, stated: Stated) => {
    expect(withOpen('ok', open, stated).verdict).toBeNull();
  });

  it.each(['out', 'undecided'] as const)('leaves what is %s so', (verdict) => {
    expect(withOpen(verdict, ['new max'])).toEqual(judgement(verdict));
  });

  it.each([
    ['there is none', [], { wear: [10, 50] }],
    ['a nearer band has one that was', ['wear max'], { new: [20, 38] }],
    ['it is a target', ['target max'], { new: [20, 38] }],
  ] as const)('leaves the verdict where %s', (_, open, stated: Stated) => {
    expect(withOpen('ok', open, stated)).toEqual(judgement('ok'));
  });
});

describe('a position without a value', () => {
  const of = (quantity: string, isNamedBySession = false) =>
    ({ quantity, family: { isNamedBySession } }) as unknown as Characteristic;
  const verdictOf = (stated: Stated, open: readonly string[] = [], characteristic = of('length')) =>
    missing(limitsOf(stated, open), ['new', 'wear'], characteristic).verdict;

  it.each([
    ['a max alone', { new: [undefined, 38] }, [], 'missing'],
    ['a min alone', { wear: [10, undefined] }, [], 'missing'],
    ['a last size', { last: [10, undefined] }, [], 'missing'],
    ['one that cannot be worked out', {}, ['wear min'], 'missing'],
    ['a target', { target: [1, 2] }, [], null],
    ['a target that cannot be worked out', {}, ['target max'], null],
    ['none', {}, [], null],
  ] as const)('with the limit %s is %4$s', (_, stated: Stated, open, expected) => {
    expect(verdictOf(stated, open)).toBe(expected);
  });

  it('is missing without any limit where it is a test, and never where a session names its places', () => {
    expect(verdictOf({}, [], of('pass or fail'))).toBe('missing');
    expect(verdictOf({}, [], of('pass or fail', true))).toBeNull();
    expect(verdictOf({ new: [20, 38] }, ['wear max'], of('torque', true))).toBeNull();
  });

  it('has the limits that would decide, and lies beyond none', () => {
    const { deciding, ...others } = missing(limitsOf({ new: [20, 38] }), ['new'], of('length'));
    expect(others).toEqual({ verdict: 'missing', probability: null, marginal: false, past: undefined });
    expect([shown(deciding.min), shown(deciding.max)]).toEqual(['new 20', 'new 38']);
  });
});

describe('whether a place can have a value', () => {
  const lies = { places: () => [] };
  const liesNowhere = { places: () => undefined };
  const anywhere = { inputs: [] };
  it.each([
    ['where it is only read', [], true],
    ['where its inputs lie at the place itself', [anywhere], true],
    ['where they lie somewhere', [lies], true],
    ['where by one of two ways they do', [liesNowhere, lies], true],
    ['not where they lie nowhere', [liesNowhere], false],
    ['not where the way by neighbours has none', [anywhere, liesNowhere], false],
  ])('%s', (_, derivations, expected) => {
    const of = { derivations } as unknown as Characteristic;
    const unasked = undefined as never;
    expect(canBeAt(of, unasked, unasked, unasked)).toBe(expected);
  });
});
