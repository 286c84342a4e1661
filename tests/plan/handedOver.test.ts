import { describe, expect, it } from 'vitest';
import { closingOf, mayClose } from '../../src/plan/closing/closing.ts';
import { orderList } from '../../src/plan/order/orderList.ts';
import { planContext } from '../../src/plan/work/context.ts';
import { jobsOf } from '../../src/plan/work/jobs.ts';
import { ENGINE, type Files, limitsOf, REGISTER, reportOf, sessionOf, shopOf } from '../shopOf.ts';

const MAINS = 'main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }';

const shop = (
  third: string,
  more: {
    readonly session?: string;
    readonly shop?: string;
    readonly stage?: string;
    readonly files?: Files;
  } = {},
): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: in, mass: g }\n${more.shop ?? ''}`,
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(MAINS),
  'e/session.yaml': sessionOf(
    more.stage ?? 'teardown',
    // Read twice: one that is far from the others might be a slip.
    [1, 2]
      .map(() => `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9983, 3: ${third} } }`)
      .join('\n'),
    more.session,
  ),
  ...more.files,
});

function contextOf(files: Files) {
  const report = reportOf(files);
  if (report.state === undefined) throw new Error('no session');
  const context = planContext(report.engine, shopOf(files).registry, report.state);
  return { report, context, jobs: jobsOf(context), engine: report.engine };
}

describe('the order list', () => {
  const linesOf = (files: Files) => {
    const { context, jobs } = contextOf(files);
    return orderList(context, jobs).map(({ count, what, size, when, onShelf }) => [
      count,
      what,
      size,
      when,
      onShelf,
    ]);
  };

  it('has shells of the step for every main, when the journals are back, less what is on the shelf', () => {
    const stock =
      'kind: stock\nshells:\n  - { code: M, fits: main shells, size: 0.020 under, wall: 0.13, count: 5 }\n  - { code: S, fits: main shells, wall: 0.12, count: 20 }\n';
    expect(linesOf(shop('2.9880', { files: { 'stock.yaml': stock } }))[4]).toEqual([
      3,
      'main shell pairs',
      '0.020 under',
      'after measuring',
      2,
    ]);
  });

  it('buys what comes with a cut once', () => {
    const worn = 'found: [{ on: main 3 shell lower, is: wiped to copper, do: renew }]\n';
    expect(
      linesOf(shop('2.9880', { session: worn })).filter(([, what]) => what === 'main shell pairs'),
    ).toHaveLength(1);
    expect(linesOf(shop('2.9984', { session: worn }))[0]).toEqual([1, 'main shell pair', 'std', 'now', 0]);
  });

  describe('of a shell to renew over a journal that was ground', () => {
    const wiped = 'found: [{ on: main 3 shell lower, is: wiped, do: renew }]\n';
    const stock =
      'kind: stock\nshells: [{ code: M, fits: main shells, size: 0.020 under, wall: 0.13, count: 4 }]\n';
    const shellsOf = (bores: string) =>
      linesOf({
        ...shop('2.9880', { session: wiped }),
        'stock.yaml': stock,
        'e/limits.yaml': limitsOf(`${MAINS}\nmain_bearing_clearance: { new: 0.0010 to 0.0030 }`),
        'e/ground.yaml': sessionOf(
          'machined',
          `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9785, 2: 2.9785, 3: 2.9785 } }\n${bores}`,
          'machined: [{ part: main journals, size: 0.020 under }]\n',
        ).replace(/date: .*/, 'date: 2026-03-01'),
      }).filter(([, what]) => what === 'main shell pairs');

    it('has the size of that journal, and may lie on the shelf', () => {
      expect(shellsOf('')).toEqual([[3, 'main shell pairs', '0.020 under', 'after measuring', 2]]);
    });

    it('is bought once where shells are chosen there in any case', () => {
      const worn = '- { measure: main_bearing_bore, with: mic, at: { 1: 3.0005, 2: 3.0005, 3: 3.0005 } }';
      expect(shellsOf(worn)).toEqual([[3, 'main shell pairs', '0.020 under', 'after measuring', 2]]);
    });
  });

  it('names what a cut takes whose depth is not known yet', () => {
    const scored = 'found: [{ on: main 2, is: scored, do: machine }]\n';
    expect(
      linesOf(shop('2.9984', { session: scored })).filter(([, what]) => what === 'main shell pairs'),
    ).toEqual([[3, 'main shell pairs', 'depth unknown', 'after measuring', 0]]);
  });

  it('is empty of an engine that was not opened', () => {
    expect(linesOf(shop('2.9984', { stage: 'service' }))).toEqual([]);
  });
});

describe('an engine may be closed up', () => {
  const closes = (files: Files): boolean => {
    const { context, report } = contextOf(files);
    return mayClose(closingOf(report, context.state));
  };
  const rebuilt = (third: string, session = '', files: Files = {}, shopText = ''): boolean =>
    closes(shop(third, { stage: 'rebuild', session, files, shop: shopText }));

  it('where all that was measured is inside', () => expect(rebuilt('2.9984')).toBe(true));

  it('not where something is out, unless that was conceded', () => {
    expect(rebuilt('2.9975')).toBe(false);
    const conceded =
      'concessions: [{ measure: main_journal_diameter, at: 3, down_to: 2.9970, reason: standby engine, by: RK, agreed: the owner }]\n';
    expect(rebuilt('2.9975', conceded)).toBe(true);
    expect(rebuilt('2.9969', conceded)).toBe(false);
  });

  it('not where something was left out', () => expect(rebuilt('~')).toBe(false));

  it('not where something found is to be dealt with', () => {
    const seen = (way: string): string => `found: [{ on: main journal 2, is: scratched, do: ${way} }]\n`;
    expect(rebuilt('2.9984', seen('machine'))).toBe(false);
    expect(rebuilt('2.9984', seen('hold'))).toBe(false);
    expect(rebuilt('2.9984', seen('reuse'))).toBe(false);
    expect(rebuilt('2.9984', seen('reuse, by: RK'))).toBe(true);
  });

  it('not where a joint was never tightened', () => {
    const torque =
      'kind: torque\njoint: caps\nsource: Invented.\nfasteners: { names: [1, 2] }\norder: [1, 2]\npasses: [{ to: 40 lbf ft }]\n';
    expect(rebuilt('2.9984', '', { 'e/caps.yaml': torque })).toBe(false);
    const done = 'tightened: [{ sequence: caps, passes: [{ to: 40 lbf ft }] }]\n';
    expect(rebuilt('2.9984', done, { 'e/caps.yaml': torque })).toBe(true);
  });

  it('not before a box that the shop requires is ticked', () => {
    const required = 'plan: { required: [Second  initials] }\n';
    expect(rebuilt('2.9984', '', {}, required)).toBe(false);
    expect(rebuilt('2.9984', 'confirmed: { what: second initials, by: RK }\n', {}, required)).toBe(true);
    expect(rebuilt('2.9984', 'confirmed: { what: timing marks in line, by: RK }\n', {}, required)).toBe(
      false,
    );
  });

  it('not by the figures of a machine shop alone', () => {
    const theirs = (more: string): Files => ({
      ...shop('2.9984', { stage: 'rebuild' }),
      'e/session.yaml': sessionOf(
        'rebuild',
        `- { measure: main_journal_diameter, from: North grinding, at: { 1: 2.9985, 2: 2.9985, 3: 2.9985 } }\n${more}`,
      ),
    });
    expect(closes(theirs(''))).toBe(false);
    const ours = '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9984, 2: 2.9984, 3: 2.9984 } }';
    expect(closes(theirs(ours))).toBe(true);
    const { report } = contextOf(theirs(ours));
    const row = report.state?.rows[0];
    expect(row?.routes.map(({ route }) => route.with)).toEqual([['mic'], ['figures of North grinding']]);
  });
});
