import { describe, expect, it } from 'vitest';
import { type Files, limitsOf, reportOf, sessionOf } from '../../shopOf.ts';

const IN_LINE = '{ cylinders: 4, mains: 5, crankpins: 4, valves: [I, E] }';
const VEE =
  '{ cylinders: 4, mains: 3, crankpins: { 1: [1, 3], 2: [2, 4] }, banks: { L: [1, 2], R: [3, 4] }, valves: [I, E] }';

interface Said {
  readonly first?: string;
  readonly now: string;
  readonly says?: string;
  readonly layout?: string;
  readonly measure?: string;
}

const engine = ({
  first = '{ all: 89.84 }',
  now,
  says = '',
  layout = IN_LINE,
  measure = 'head_thickness',
}: Said): Files => {
  const read = (at: string): string => `- { measure: ${measure}, at: ${at} }`;
  const [, work = ''] = /^(- .*)$/.exec(says) ?? [];
  return {
    'e/engine.yaml': `kind: engine\nname: Bench engine\nunits: { length: mm, torque: N m }\nlayout: ${layout}\n`,
    'e/limits.yaml': limitsOf(`${measure}: { new: { min: 80 } }`),
    'e/1.yaml': sessionOf('teardown', read(first)).replace('02-03', '02-01'),
    'e/2.yaml': sessionOf('machined', `${work}\n${read(now)}`, work === '' && says !== '' ? `${says}\n` : ''),
  };
};

const told = (said: Said): readonly string[] => {
  const { state, sessions } = reportOf(engine(said));
  const of = (findings: readonly { code: string; message: string }[] = []) =>
    findings.flatMap(({ code, message }) => (code === 'reading/grade' ? message : []));
  expect(of(state?.findings)).toEqual(of(sessions.at(-1)?.findings));
  return of(state?.findings);
};

describe('a head or deck that is lower than it was, where nobody says that it was cut', () => {
  it('is told with both figures, and with the line to write', () => {
    expect(told({ now: '{ all: 89.65 }' })).toEqual([
      'head thickness all: 89.65 mm, and 89.84 mm on 2026-02-01: lower by 0.19 mm, and no document says that it was cut; write `machined: [{ part: cylinder head }]` in this session, so that what was read before the cut, such as valve recession, counts no more; else measure it again',
    ]);
    expect(told({ measure: 'deck_height', now: '{ all: 89.65 }' })).toEqual([
      'deck height all: 89.65 mm, and 89.84 mm on 2026-02-01: lower by 0.19 mm, and no document says that it was cut; write `machined: [{ part: block }]` in this session, so that what was read before the cut counts no more; else measure it again',
    ]);
  });

  it('is named by its bank in a vee', () => {
    const [message, ...more] = told({
      layout: VEE,
      first: '{ L: 89.84, R: 89.84 }',
      now: '{ L: 89.84, R: 89.65 }',
    });
    expect(message).toContain('`machined: [{ part: cylinder head, at: [R] }]`');
    expect(more).toEqual([]);
  });

  it.each([
    'machined: [{ part: cylinder head }]',
    'replaced: [{ part: cylinder head }]',
    'fitted: { head: { condition: new } }',
    '- { work: surfaced, on: cylinder head }',
  ])('is not, where the session says %s', (says) => {
    expect(told({ now: '{ all: 89.65 }', says })).toEqual([]);
  });

  it.each([
    ['by no more than both readings are known to', '{ all: 89.84 }', '{ all: 89.83 }'],
    ['and not at all', '{ all: 89.84 }', '{ all: 89.84 }'],
    ['and is thicker', '{ all: 89.84 }', '{ all: 90.00 }'],
    [
      'at an end that was not read before',
      '{ all: { front: 89.84 } }',
      '{ all: { front: 89.84, rear: 89.65 } }',
    ],
  ])('is not, where it is lower %s', (_, first, now) => {
    expect(told({ first, now })).toEqual([]);
  });
});
