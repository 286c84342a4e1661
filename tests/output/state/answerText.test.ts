import { describe, expect, it } from 'vitest';
import { answerText } from '../../../src/output/state/answerText.ts';
import { reportOf } from '../../shopOf.ts';

const answerOf = (mains: number, limits: readonly string[]): string => {
  const { state, followUps } = reportOf({
    'e/engine.yaml': `kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: ${mains}, cylinders: 1, crankpins: 1 }\n`,
    'e/limits.yaml': `kind: limits\nsource: Invented.\nlimits: { ${limits.map((id) => `${id}: { new: { max: 5 } }`).join(', ')} }\n`,
    'e/s.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n${limits.map((id) => `  - { measure: ${id}, at: { 1: 3.25 } }\n`).join('')}`,
  });
  return state === undefined ? '' : answerText(state, followUps);
};

describe('what is missing in the answer', () => {
  it.each([
    [25, 'main journal diameter 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24 25;'],
    [26, 'main journal diameter at 25 positions;'],
  ])('of %d places with one read is named as far as anybody reads it', (mains, said) => {
    expect(answerOf(mains, ['main_journal_diameter'])).toContain(`${mains - 1} missing: ${said}`);
  });
});

describe('what is to be done yet has a word of its own, which is not that of the page before closing up', () => {
  const answer = (more: string): string => {
    const { state, followUps } = reportOf({
      'e/engine.yaml':
        'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 3, cylinders: 2, crankpins: 2 }\n',
      'e/limits.yaml':
        'kind: limits\nsource: Invented.\nlimits: { main_journal_diameter: { new: { max: 3 } } }\n',
      'e/s.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings: [{ measure: main_journal_diameter, at: { 1: 3.25, 2: 2.9, 3: 2.9 } }]\n${more}\n`,
    });
    return state === undefined ? '' : answerText(state, followUps);
  };

  it('of what was found', () => {
    expect(answer('found: [{ on: main 2 shell, is: wiped, do: renew }]')).toContain(
      '; 1 found, not dealt with;',
    );
  });

  it('of what was promised', () => {
    const promised =
      'concessions: [{ measure: main_journal_diameter, at: 1, up_to: 3.25, reason: invented, follow_up: { measure: compression_pressure, at: 1, min: 600 kPa } }]';
    expect(answer(promised)).toContain('1 promised, to be measured;');
    expect(answer(promised)).not.toMatch(/\bopen\b/);
  });
});
