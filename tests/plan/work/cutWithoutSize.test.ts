import { describe, expect, it } from 'vitest';
import { jobWords } from '../../../src/output/plan/jobWords.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { unitNamed } from '../../../src/quantity/units.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { contextOf, jobCalled, jobsIn } from '../planOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
main_journal_taper: { new: { max: 0.0003 }, wear: { max: 0.0010 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }
cylinder_taper: { wear: { max: 0.0020 } }`;

const TAPERED = '- { measure: main_journal_taper, with: mic, at: { 1: 0.0001, 2: 0.0013, 3: 0.0001 } }';
const SIZES = (of: string): string =>
  `- { measure: main_journal_diameter, with: mic, at: { 1: ${of}, 2: ${of}, 3: ${of} } }`;

const shop = (later: string, says = '', stage = 'machined'): Files => ({
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(LIMITS),
  'e/1.yaml': sessionOf('teardown', SIZES('2.9985')),
  'e/2.yaml': sessionOf(stage, later, says).replace(/date: .*/, 'date: 2026-03-01'),
});

const names = (files: Files): readonly string[] =>
  jobsIn(files)
    .map(({ name }) => name)
    .filter((name) => !/^measure/.test(name));

describe('journals whose form is out and whose size nobody knows', () => {
  it.each([
    ['came back ground, and were not measured', TAPERED, 'machined: [{ part: main journals }]\n'],
    ['came back with the crankshaft', TAPERED, 'machined: [{ part: crankshaft }]\n'],
    [
      'came back ground to a stated size, and were not measured',
      TAPERED,
      'machined: [{ part: main journals, size: 0.010 under }]\n',
    ],
    [
      'came back of another size, and none is stated',
      `${SIZES('2.9885')}\n${TAPERED}`,
      'machined: [{ part: main journals }]\n',
    ],
  ])('are not ground again where they %s', (_, blocks, says) => {
    expect(names(shop(blocks, says))).toEqual(['state the size of main journals']);
    const { urgency, rows, follows } = jobCalled('state the size of main journals', shop(blocks, says));
    expect([urgency, ...rows.map(({ characteristic }) => characteristic.id)]).toEqual([
      'must',
      'main_journal_taper',
    ]);
    expect(follows).toEqual([
      'measure main journal diameter, and state the size under machined: before any more metal goes',
      'if it came back like this, show these figures to the shop that ground it, and send it back',
    ]);
  });

  it('are ground where their size is known', () => {
    const files = shop(
      `${SIZES('2.9865')}\n${TAPERED}`,
      'machined: [{ part: main journals, size: 0.010 under }]\n',
    );
    expect(names(files)).toContain('grind main journals');
  });

  it('are ground where nobody machined them, once they are measured', () => {
    const files = {
      ...shop(TAPERED, '', 'teardown'),
      'e/1.yaml': 'kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: []\n',
    };
    expect(names(files)).toContain('grind main journals');
    const context = contextOf(files);
    const job = jobsOf(context).find(({ name }) => name === 'grind main journals');
    const words = job && jobWords(job, [], context.engine, () => unitNamed('in'));
    expect(words?.cuts.flatMap(({ answer }) => answer)).toEqual([
      'main journal 1 to 3 not measured: measure it before a step is chosen',
    ]);
  });
});

it('a bore that came back bored and is out in its form is shown to the shop that bored it', () => {
  const files = shop(
    '- { measure: cylinder_taper, with: bore, at: { 1: 0.0001, 2: 0.0033, 3: 0.0001, 4: 0.0001 } }',
    'machined: [{ part: cylinders }]\n',
  );
  expect(jobCalled('state the size of cylinders', files).follows).toEqual([
    'measure cylinder bore, and state the size under machined: before any more metal goes',
    'if it came back like this, show these figures to the shop that bored it, and send it back',
  ]);
});
