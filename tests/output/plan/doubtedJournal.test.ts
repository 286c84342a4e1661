import { describe, expect, it } from 'vitest';
import { planPage } from '../../../src/output/plan/planPage.ts';
import { workPlan } from '../../../src/plan/work/workPlan.ts';
import { veeEngine } from '../../plan/veeEngine.ts';
import { reportOf, sessionOf } from '../../shopOf.ts';

const grinding = (first: string, shop = '') => {
  const files = veeEngine('main_journal_diameter: { new: 69.980 to 70.000, wear: { min: 69.955 } }', {
    'e/a.yaml': sessionOf(
      'teardown',
      `- { measure: main_journal_diameter, at: { 1: ${first}, 2: 69.984, 3: 69.950, 4: 69.984 } }`,
    ),
  });
  const { engine, registry, state } = reportOf({ ...files, 'shop.yaml': `${files['shop.yaml']}${shop}` });
  if (state === undefined) throw new Error('no session');
  const { jobs } = planPage(workPlan(engine, registry, state));
  const job = jobs.find(({ title }) => title.startsWith('grind'));
  const answer = (job?.cuts ?? []).flatMap((cut) => cut.answer);
  return { title: job?.title, told: answer.filter((each) => each.startsWith('main journal 1')) };
};

describe('a crankshaft is ground at all its mains', () => {
  it('also at one whose reading is in doubt, which is measured again first', () => {
    expect(grinding('69.898')).toEqual({
      title: 'grind main journals 1 to 4',
      told: ['main journal 1: its reading is in doubt; measure it again before grinding'],
    });
  });

  it('also at one that nobody measured', () => {
    expect(grinding('~')).toEqual({
      title: 'grind main journals 1 to 4',
      told: ['main journal 1 not measured: it may need more'],
    });
  });

  it('but where the shop grinds each to its own size', () => {
    expect(grinding('69.898', 'plan: { separate: [main journals] }\n').title).toBe('grind main journal 3');
  });
});
