import { describe, expect, it } from 'vitest';
import type { JudgingOptions } from '../../../src/checks/judge/row.ts';
import { UNMEASURED, unitOf } from '../../../src/checks/judge/session.ts';
import { engineIn, type Files, findingsOf, sessionOf, shopFiles } from '../../shopOf.ts';
import { viewIn } from '../viewIn.ts';

const JOURNAL = '- { measure: main_journal_diameter, at: { 1: 3, 2: 3, 3: 3 } }';

const unmeasured = (limits: string, options: JudgingOptions = {}, more: Files = {}, stage = 'rebuild') =>
  findingsOf(shopFiles(limits, JOURNAL, stage, more), options).filter(
    ({ code }) => code === 'session/unmeasured',
  );

const PLAY = 'crankshaft_end_play: { new: { max: 0.013 } }';

describe('what has limits that would decide and was measured nowhere', () => {
  it('is told once, at the head of its session', () => {
    expect(unmeasured(PLAY)).toMatchObject([
      {
        code: 'session/unmeasured',
        severity: 'warning',
        message: 'crankshaft end play has limits and was not measured',
        place: { path: 'e/session.yaml', line: 3, column: 7 },
        measure: 'crankshaft_end_play',
      },
    ]);
    expect(unmeasured(PLAY, {}, {}, 'trial').map(({ severity }) => severity)).toEqual(['remark']);
    expect(UNMEASURED.severity).toBe('remark');
  });

  it.each([
    ['by a min alone', 'crankshaft_end_play: { new: { min: 0.004 } }', 1],
    ['by a wear limit', 'crankshaft_end_play: { wear: { max: 0.013 } }', 1],
    ['by a last size', 'crankpin_diameter: { last_size: 2.9 }', 1],
    ['by a limit at one place', 'crankpin_diameter: { at: { 2: { new: { min: 2.9 } } } }', 1],
    ['not by a target', 'crankshaft_end_play: { target: { max: 0.013 } }', 0],
    ['not where it was measured', 'main_journal_diameter: { new: { min: 2.9 } }', 0],
    ['not where a session names its places', 'turning_torque: { new: { max: 9 } }', 0],
  ])('%s', (_, limits, expected) => {
    expect(unmeasured(limits)).toHaveLength(expected);
  });

  const trial = (read: string): Files => ({
    'e/trial.yaml': sessionOf('trial', read).replace('2026-02-03', '2026-01-20'),
  });
  const using = (more = ''): Files => ({
    'e/session.yaml': sessionOf('rebuild', JOURNAL, `uses: [trial]\n${more}`),
  });
  const READ = '- { measure: crankshaft_end_play, value: 0.008 }';

  it('is no more told where a session that this one uses has it, unless its parts were changed since', () => {
    expect(unmeasured(PLAY, {}, { ...trial(READ), ...using() })).toEqual([]);
    expect(unmeasured(PLAY, {}, { ...trial(READ) })).toHaveLength(1);
    expect(unmeasured(PLAY, {}, { ...trial(JOURNAL), ...using() })).toHaveLength(1);
    expect(
      unmeasured(PLAY, {}, { ...trial(READ), ...using('replaced: [{ part: crankshaft }]\n') }),
    ).toHaveLength(1);
  });
});

it('a quantity is in the unit of the engine, and in its first where the engine says none', () => {
  const { engine } = viewIn(shopFiles(PLAY, JOURNAL, 'rebuild', { 'e/engine.yaml': engineIn('mm') }));
  expect(unitOf('length', engine).name).toBe('mm');
  expect(unitOf('angle', engine).name).toBe('deg');
});
