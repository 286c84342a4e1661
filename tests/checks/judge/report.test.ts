import { describe, expect, it } from 'vitest';
import { isState, type ReportedSession, reportEngine } from '../../../src/checks/judge/report.ts';
import { type Files, reportOf, shopOf } from '../../shopOf.ts';
import { engine, journals } from '../state/standing.ts';

const WRITTEN = (session: ReportedSession | undefined, position: string): string | undefined => {
  const row = session?.rows.find((each) => each.position.name === position);
  const before = row && session?.before(row);
  return before && `${before.date}: ${before.row.routes[0]?.route.written.join()}`;
};

const stateOf = (files: Files) => {
  const { state, ...report } = reportOf(files);
  if (state === undefined) throw new Error('no state');
  return { state, ...report };
};

describe('what was known before of a place', () => {
  const files = engine(
    ['teardown', journals('1: 2.9985, 2: 2.9984')],
    ['machined', journals('1: 2.9983, 3: 2.9986')],
    ['trial', journals('1: 2.9982')],
  );

  it('in a session is the value of the latest one before it that has one', () => {
    const [first, second, third] = reportOf(files).sessions;
    expect([WRITTEN(first, '1'), WRITTEN(second, '1'), WRITTEN(third, '1')]).toEqual([
      undefined,
      '2026-03-01: 2.9985',
      '2026-03-02: 2.9983',
    ]);
    expect(WRITTEN(second, '3')).toBeUndefined();
  });

  it('in the state is that before the session in which its value was read', () => {
    const { state } = stateOf(files);
    expect([WRITTEN(state, '1'), WRITTEN(state, '2'), WRITTEN(state, '3')]).toEqual([
      '2026-03-02: 2.9983',
      undefined,
      undefined,
    ]);
  });

  it('of a place whose value holds no longer is that value', () => {
    const worked = engine(
      ['teardown', journals('1: 2.9985, 2: 2.9984, 3: 2.9986')],
      ['machined', journals('1: 2.9983'), 'machined: [{ part: main journals }]'],
    );
    const { state } = stateOf(worked);
    expect(WRITTEN(state, '2')).toBe('2026-03-01: 2.9984');
    expect(state.lastKnown.map(({ row, date }) => [row.characteristic.id, row.position.name, date])).toEqual([
      ['main_journal_diameter', '2', '2026-03-01'],
      ['main_journal_diameter', '3', '2026-03-01'],
    ]);
  });
});

describe('the state of an engine', () => {
  const CAPS = (joint: string): string =>
    `kind: torque\njoint: ${joint}\nfasteners: { names: [1, 2] }\nsource: Invented.\npasses: [{ to: 90 lbf ft }]\n`;
  const log = (sequence: string): string => `tightened: [{ sequence: ${sequence}, fasteners: reused }]`;

  it('is that of the sessions since it last ran', () => {
    const files = engine(
      ['trial', journals('1: 2.9985')],
      ['teardown', journals('1: 2.9980')],
      ['trial', journals('2: 2.9984')],
    );
    const { state, sessions } = stateOf(files);
    expect(state.run.map(({ date }) => date)).toEqual(['2026-03-02', '2026-03-03']);
    expect(isState(state)).toBe(true);
    expect(sessions.map(isState)).toEqual([false, false, false]);
    expect(WRITTEN(state, '1')).toBe('2026-03-01: 2.9985');
  });

  it('says how each joint was tightened last, and which was not', () => {
    const { state } = stateOf({
      ...engine(
        ['trial', journals('1: 2.9985'), log('caps')],
        ['rebuild', journals('2: 2.9985'), log('caps')],
      ),
      'e/caps.yaml': CAPS('main caps'),
      'e/head.yaml': CAPS('cylinder head'),
    });
    expect(state.tightened.map(({ document }) => document.name)).toEqual(['caps']);
    expect(state.tightened[0]).toBe(state.run[1]?.tightened[0]);
    expect(state.untightened.map(({ name }) => name)).toEqual(['head']);
  });

  it('is none without a session', () => {
    const { 'e/1.yaml': _, ...empty } = engine(['trial', journals('1: 2.9985')]);
    expect(reportOf(empty).state).toBeUndefined();
    expect(reportOf(empty).sessions).toEqual([]);
  });
});

it('a run is judged by the rule that it asks for, else by that of the engine', () => {
  const { engine: read, registry } = shopOf(engine(['trial', journals('1: 2.9985')]));
  if (read === undefined) throw new Error('no engine');
  expect(reportEngine(read, registry, {}).rule).toBe('simple');
  expect(reportEngine(read, registry, { rule: 'guarded' }).rule).toBe('guarded');
});
