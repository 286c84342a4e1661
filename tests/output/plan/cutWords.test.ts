import { describe, expect, it } from 'vitest';
import { unitOfRow } from '../../../src/checks/judge/session.ts';
import { cutWords } from '../../../src/output/plan/cutWords.ts';
import { contextOf, jobCalled } from '../../plan/planOf.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';

const JOURNALS =
  '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9983, 3: 2.9960 } }\n'.repeat(2);

function workingsOf(found: string): string {
  const files: Files = {
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf('main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }'),
    'e/session.yaml': sessionOf('teardown', JOURNALS, `found:\n${found}`),
  };
  const { engine } = contextOf(files);
  const { cut } = jobCalled('grind main journals', files);
  if (cut === undefined) throw new Error('no cut');
  return cutWords(cut, engine, (row) => unitOfRow(row, engine))
    .flatMap(({ workings }) => workings)
    .join('\n');
}

const scored = (depth: string, on = 'main journal 3'): string =>
  `  - { on: ${on}, is: scored, do: machine, depth: ${depth} }\n`;
const ASKED = 'depth of damage (as stated: check asks about it)';

describe('the workings of a cut', () => {
  it('say of a depth of a whole step that check asks about it', () => {
    expect(workingsOf(scored('0.0100'))).toContain(`2 × 0.0100 ${ASKED}`);
    expect(workingsOf(scored('0.0100', '[main journal 3, oil pump]'))).toContain(ASKED);
    expect(workingsOf(scored('0.0100') + scored('0.0010'))).toContain(ASKED);
  });

  it('say nothing more of a usual depth, nor of one that was stated again', () => {
    expect(workingsOf(scored('0.0010'))).toMatch(/0\.0010 depth of damage −/);
    expect(workingsOf(scored('0.0100').repeat(2))).toMatch(/0\.0100 depth of damage −/);
  });

  it('say so still where another part that the line names was dealt with', () => {
    const replaced = 'replaced: [{ part: piston 1 }]\n';
    expect(workingsOf(`${scored('0.0100', '[main journal 3, piston 1]')}${replaced}`)).toContain(ASKED);
  });
});
