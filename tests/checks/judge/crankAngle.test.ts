import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measuredRows, viewOf } from '../../../src/checks/value/measured.ts';
import { changesBetween } from '../../../src/compare/change.ts';
import { stateOfSession } from '../../../src/compare/state.ts';
import { trendOf } from '../../../src/compare/trend.ts';
import { toNumber } from '../../../src/quantity/fraction.ts';
import { runs } from '../../propertyRuns.ts';
import {
  ENGINE,
  type Files,
  findingsOf,
  limitsOf,
  refusalsOf,
  rowsOf,
  shopOf,
  verdictsOf,
} from '../../shopOf.ts';

const SHOP = `kind: shop
characteristics:
  intake_opens: { label: intake opens, quantity: angle, positions: cylinder, cycle: 720, instrument: protractor, too_great: late, too_small: early }
`;

const files = (limits: string, readings: string, more = ''): Files => ({
  'shop.yaml': SHOP,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(limits === '' ? 'cylinder_bore: { new: 4 to 5 }' : `intake_opens: ${limits}`),
  'e/session.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\n${more}readings:\n  - { measure: intake_opens, at: { ${readings} } }\n`,
});

const verdictOf = (limits: string, reading: string): string | null | undefined =>
  verdictsOf(files(limits, `1: ${reading}`))['intake_opens 1'];

describe('a crank angle', () => {
  it.each([
    ['{ new: 700 to 710 }', '-15', 'ok'],
    ['{ new: 700 to 710 }', '705', 'ok'],
    ['{ new: -10 to 10 }', '715', 'ok'],
    ['{ new: 710 to 10 }', '715', 'ok'],
    ['{ new: 710 to 10 }', '5', 'ok'],
    ['{ new: { min: 710, max: 10 } }', '10', 'ok'],
    ['{ new: 710 to 10 }', '710', 'ok'],
    ['{ new: 710 to 10 }', '10.5', 'out'],
    ['{ new: 710 to 10 }', '709.5', 'out'],
    ['{ new: { max: 10 } }', '719', 'ok'],
    ['{ new: { min: 710 } }', '2', 'ok'],
    ['{ new: 710 to 10, target: 718 to 2 }', '6', 'off target'],
  ])('of %s that reads %s is %s', (limits, reading, verdict) => {
    expect(verdictOf(limits, reading)).toBe(verdict);
  });

  it('stands as it was written, with its limits in the same turn', () => {
    const rows = rowsOf(files('{ new: 710 to 10 }', '1: 719, 2: 1'));
    const shown = rows
      .filter(({ routes }) => routes.length > 0)
      .map((row) => [
        row.routes.map(({ mean, route }) => [toNumber(mean), route.written]),
        [row.limits.bands.new?.min, row.limits.bands.new?.max].map(
          (limit) => limit && toNumber(limit.amount),
        ),
      ]);
    expect(shown).toEqual([
      [[[719, ['719']]], [710, 730]],
      [[[1, ['1']]], [-10, 10]],
    ]);
  });

  it.each([
    ['{ new: 5 to 13 }', '734', 'new max 13.0'],
    ['{ new: 710 to 10 }', '-11', 'new min 710.0'],
    ['{ new: 710 to 10 }', '731', 'new max 10.0'],
    ['{ new: 5 deg to 13 deg }', '734', 'new max 13.0'],
  ])('prints the limits of %s as written, whatever turn it is read in', (limits, reading, said) => {
    const [out] = findingsOf(files(limits, `1: ${reading}.0`)).filter(({ code }) => code === 'reading/out');
    expect(out?.message).toContain(`(${said})`);
  });

  it('that is out says by how much, and which way', () => {
    const out = findingsOf(files('{ new: 710 to 10 }', '1: 12.5, 2: 0, 3: 0, 4: 0')).filter(
      ({ code }) => code === 'reading/out',
    );
    expect(out.map(({ message }) => message)).toEqual([
      'intake opens 1: 12.5 deg, late by 2.5 deg (new max 10.0)',
    ]);
  });

  it('read several times across zero has its mean there', () => {
    const [row] = rowsOf(files('{ new: 710 to 10 }', '1: { repeat: [719.5, 0.5, 0.0] }'));
    expect(row?.routes[0] && toNumber(row.routes[0].mean)).toBe(720);
    expect(row?.judgement.verdict).toBe('ok');
  });

  it('read as a range across zero lies in that range', () => {
    expect(verdictOf('{ new: 715 to 5 }', '718 to 2')).toBe('ok');
    expect(verdictOf('{ new: 715 to 1 }', '718 to 2')).toBe('undecided');
  });

  it('is no slip, and stands apart from none of its like, on the other side of zero', () => {
    const all = files('{ new: 710 to 10 }', '1: 719.5, 2: 0.5, 3: 0, 4: 1');
    expect(findingsOf(all).filter(({ code }) => /spread|slip|disagree/.test(code))).toEqual([]);
  });

  it('that was read twice agrees with itself across zero', () => {
    const twice = files('{ new: 710 to 10 }', '1: 719.9');
    const session = `${twice['e/session.yaml']}  - { measure: intake_opens, at: { 1: 0 } }\n`;
    const [row] = rowsOf({ ...twice, 'e/session.yaml': session });
    expect(row?.routes.map(({ en }) => en === null || en < 1)).toEqual([true, true]);
  });

  it('is conceded on the same side of zero', () => {
    const concession =
      'concessions: [{ measure: intake_opens, at: 1, up_to: 14, reason: standby, by: RK }]\n';
    const of = (reading: string) =>
      verdictsOf(files('{ new: 710 to 10 }', `1: ${reading}`, concession))['intake_opens 1'];
    expect([of('12'), of('732'), of('15')]).toEqual(['accepted', 'accepted', 'out']);
  });

  it('has the same verdict in every turn', () => {
    const angle = fc.integer({ min: 0, max: 1440 }).map((halves) => halves / 2);
    fc.assert(
      fc.property(angle, angle, fc.integer({ min: 1, max: 80 }), (reading, from, width) => {
        const limits = `{ new: ${from} to ${(from + width) % 720} }`;
        const verdicts = [reading, reading - 720, reading + 720].map((each) =>
          verdictOf(limits, String(each)),
        );
        const isInside = (((reading - from) % 720) + 720) % 720 <= width;
        expect(verdicts).toEqual(Array.from({ length: 3 }, () => (isInside ? 'ok' : 'out')));
      }),
      runs(200, 20),
    );
  });
});

describe('a crank angle over time', () => {
  const head = 'kind: session\nstage: service\n';
  const over = (...readings: readonly string[]) => {
    const { engine, registry } = shopOf({
      ...files('{ wear: 710 to 10 }', '1: 0'),
      ...Object.fromEntries(
        readings.map((reading, index) => [
          `e/s${index}.yaml`,
          `${head}date: 2026-03-0${index + 1}\nhours: ${1000 * (index + 1)}\nreadings: [{ measure: intake_opens, at: { 1: ${reading} } }]\n`,
        ]),
      ),
      'e/session.yaml': `${head}date: 2026-01-01\nreadings: [{ measure: intake_opens, at: { 1: 718 } }]\n`,
    });
    if (engine === undefined) throw new Error('the documents are not sound');
    return { engine, registry };
  };

  it('changes by the shorter way round', () => {
    const shop = over('719.5', '1.5');
    const [, before, after] = shop.engine.sessions.map((session) => stateOfSession(shop, session));
    const changes = before && after && changesBetween(before, after);
    expect(changes?.map(({ delta }) => delta && toNumber(delta))).toEqual([2]);
  });

  it('is followed across zero', () => {
    const { engine, registry } = over('718', '719.5', '1', '2.5');
    const intake = registry.find('intake_opens');
    const measured = engine.sessions.map((session) => {
      const view = viewOf(engine, registry, session);
      return { session, rows: measuredRows(view) };
    });
    const trend = intake && trendOf({ engine, sessions: measured }, registry, intake, 'hours');
    expect(trend?.lines.map(({ points }) => points.map(({ y }) => y))).toEqual([[-2, -0.5, 1, 2.5]]);
  });
});

describe('what does not come round', () => {
  it('refuses a cycle', () => {
    const all = files('{ new: 710 to 10 }', '1: 5');
    const shop = SHOP.replace('quantity: angle', 'quantity: length').replace('protractor', 'caliper');
    expect(refusalsOf({ ...all, 'shop.yaml': shop })).toContain('shop.yaml:3:86 value');
  });

  it('refuses a band whose ends are exchanged', () => {
    const all = files('{ new: 710 to 10 }', '1: 5');
    expect(refusalsOf({ ...all, 'shop.yaml': SHOP.replace('cycle: 720, ', '') })).toEqual([
      'e/limits.yaml:4:24 value',
    ]);
  });
});
