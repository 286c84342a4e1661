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
