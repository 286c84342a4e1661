import { describe, expect, it } from 'vitest';
import { rangedOf } from '../../../src/checks/judge/ranged.ts';
import type { DecisionRule } from '../../../src/documents/engine/shop.ts';
import { lateValue, type Value } from '../../../src/measurement/value.ts';
import { type Fraction, fraction } from '../../../src/quantity/fraction.ts';
import { findingsOf, REGISTER, rowsOf, shopFiles } from '../../shopOf.ts';
import { routeOf } from '../value/routeOf.ts';

const files = (bands: string, at: string, more = '') =>
  shopFiles(
    `main_bearing_clearance: ${bands}`,
    `- { measure: main_bearing_clearance, with: strip, at: { 1: ${at} } }${more}`,
    'rebuild',
    { 'instruments.yaml': REGISTER },
  );

const verdictOf = (bands: string, at: string, rule: DecisionRule) =>
  rowsOf(files(bands, at), { rule })[0]?.judgement.verdict;

describe('a strip that was read between its marks', () => {
  it.each([
    // What lies on both sides of a limit proves neither, wherever its middle is.
    ['{ new: 0.0015 to 0.0038 }', 'under 0.002', 'undecided'],
    ['{ new: 0.0005 to 0.0038 }', 'under 0.002', 'undecided'],
    ['{ new: 0.0020 to 0.0038 }', '0.003 to 0.004', 'undecided'],
    ['{ wear: { max: 0.0050 } }', '0.004 to 0.006', 'undecided'],
    ['{ wear: { max: 0.0070 } }', 'over 0.006', 'undecided'],
    // All of it but its end lies beyond.
    ['{ new: 0.0020 to 0.0038 }', 'under 0.002', 'out'],
    ['{ new: 0.0025 to 0.0038 }', 'under 0.002', 'out'],
    ['{ wear: { max: 0.0040 } }', '0.004 to 0.006', 'out'],
    ['{ wear: { max: 0.0060 } }', 'over 0.006', 'out'],
    ['{ wear: { max: 0.0050 } }', 'over 0.006', 'out'],
    // All of it lies inside, its ends as well.
    ['{ new: 0.0030 to 0.0040 }', '0.003 to 0.004', 'ok'],
    ['{ new: { max: 0.0020 } }', 'under 0.002', 'ok'],
    ['{ new: { min: 0.0060 } }', 'over 0.006', 'ok'],
  ])('%s: %s is %s by both rules', (bands, at, verdict) => {
    expect([verdictOf(bands, at, 'simple'), verdictOf(bands, at, 'guarded')]).toEqual([verdict, verdict]);
  });

  it('of two points either may lie across a limit, and one that is beyond decides', () => {
    const bands = '{ new: 0.0020 to 0.0038 }';
    expect(verdictOf(bands, '{ front: 0.003, rear: 0.003 to 0.004 }', 'simple')).toBe('undecided');
    expect(verdictOf(bands, '{ front: 0.006, rear: 0.003 to 0.004 }', 'simple')).toBe('out');
    expect(verdictOf(bands, '{ front: 0.002, rear: 0.002 to 0.003 }', 'simple')).toBe('ok');
  });

  it('feelers say the same: the gap lies between what goes and what does not', () => {
    const gap = (bands: string) =>
      rowsOf(
        shopFiles(
          `rod_side_clearance: ${bands}`,
          '- { measure: rod_side_clearance, at: { 1: { go: 0.010, no_go: 0.012 } } }',
        ),
        { rule: 'simple' },
      )[0]?.judgement.verdict;
    expect(gap('{ new: 0.008 to 0.011 }')).toBe('undecided');
    expect(gap('{ new: 0.010 to 0.012 }')).toBe('ok');
    expect(gap('{ new: 0.004 to 0.010 }')).toBe('out');
  });

  it('stays a plain comparison by its middle where new parts and the target are only asked about', () => {
    expect(verdictOf('{ target: 0.0026 to 0.0032, new: 0.0020 to 0.0050 }', '0.003 to 0.004', 'simple')).toBe(
      'off target',
    );
  });

  it('is told with the limit that lies in it', () => {
    const found = findingsOf(files('{ new: 0.0015 to 0.0038 }', 'under 0.002'), { rule: 'simple' });
    const finding = found.find(({ code }) => code === 'reading/undecided');
    expect(finding?.message).toBe(
      'main bearing clearance 1: 0.0010 in, read as under 0.002, may lie on either side of new min 0.0015',
    );
  });

  it('leaves an error of the instrument that is known besides to the guarded rule', () => {
    const off = REGISTER.replace('type: gauging strip,', 'type: gauging strip, max_error: 0.001 in,');
    const with_ = { ...files('{ new: 0.0030 to 0.0040 }', '0.003 to 0.004'), 'instruments.yaml': off };
    expect(rowsOf(with_, { rule: 'simple' })[0]?.judgement).toMatchObject({ verdict: 'ok', marginal: true });
    expect(rowsOf(with_, { rule: 'guarded' })[0]?.judgement.verdict).toBe('undecided');
  });
});

describe('a concession for a range', () => {
  const withConcession = (at: string, upTo: string) => {
    const text = files('{ wear: { max: 0.0040 } }', at);
    const concession = `concessions:\n  - { measure: main_bearing_clearance, at: [1], up_to: ${upTo}, reason: invented, by: RK }\n`;
    return rowsOf(
      { ...text, 'e/session.yaml': `${text['e/session.yaml']}${concession}` },
      { rule: 'simple' },
    )[0]?.judgement.verdict;
  };

  it.each([
    ['0.004 to 0.006', '0.0060', 'accepted'],
    ['0.004 to 0.006', '0.0055', 'out'],
    ['over 0.006', '0.0100', 'out'],
  ])('%s is covered up to %s: %s', (at, upTo, verdict) => {
    expect(withConcession(at, upTo)).toBe(verdict);
  });
});

describe('what is left of points of which one was read as a range', () => {
  const KNOWN = Number.POSITIVE_INFINITY;
  const value = (amount: Fraction, u: number, dof: number, range?: Value['range']): Value =>
    lateValue(
      amount,
      () =>
        new Map([
          ['mic', { u, dof }],
          ['range read', { u: 100, dof: KNOWN, isRange: true as const }],
        ]),
      range,
    );
  const rangedAs = (quantity: 'length' | 'mass', ...values: readonly Value[]) =>
    rangedOf(routeOf({ grid: { stations: [{}], directions: [undefined], rows: [values] } }), {
      quantity,
    } as Parameters<typeof rangedOf>[1]);
  const range = { below: fraction(2), above: fraction(3) };

  it('is the span of each, and the uncertainty of the least certain without its range', () => {
    const found = rangedAs('length', value(fraction(10), 1, KNOWN, range), value(fraction(30), 2, 4));
    expect(found?.spans).toEqual([
      { from: fraction(8), to: fraction(13) },
      { from: fraction(30), to: fraction(30) },
    ]);
    expect([found?.u, found?.dof]).toEqual([2, expect.closeTo(4, 9)]);
    // t(0.975; 4) = 2.776 (JCGM 100:2008, table G.2: 2.78)
    expect(found?.expanded).toBeCloseTo(2 * 2.776, 2);
    const turned = rangedAs('length', value(fraction(30), 2, 4), value(fraction(10), 1, KNOWN, range));
    expect([turned?.u, turned?.dof]).toEqual([2, expect.closeTo(4, 9)]);
  });

  it('without an upper end has none', () => {
    const open = { below: fraction(0), above: undefined };
    expect(rangedAs('length', value(fraction(10), 1, KNOWN, open))?.spans).toEqual([
      { from: fraction(10), to: undefined },
    ]);
  });

  it('is rounded once where it is a length', () => {
    const third = value(fraction(31, 3), 1, KNOWN, { below: fraction(1, 3), above: fraction(1, 3) });
    expect(rangedAs('length', third, value(fraction(31, 3), 1, KNOWN))?.spans).toEqual([
      { from: fraction(10), to: fraction(11) },
      { from: fraction(10), to: fraction(10) },
    ]);
    expect(rangedAs('mass', third)?.spans[0]?.to).not.toEqual(fraction(11));
  });

  it('is nothing where none was', () => {
    expect(rangedAs('length', value(fraction(10), 1, KNOWN))).toBeUndefined();
  });
});
