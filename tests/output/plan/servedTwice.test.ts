import { expect, it } from 'vitest';
import { planPage } from '../../../src/output/plan/planPage.ts';
import { waitingTexts } from '../../../src/output/report/waiting.ts';
import { closingOf } from '../../../src/plan/closing/closing.ts';
import { workPlan } from '../../../src/plan/work/workPlan.ts';
import { ENGINE, limitsOf, REGISTER, reportOf, sessionOf } from '../../shopOf.ts';

it('a job that serves what must and what should be renewed of one kind names it once', () => {
  const report = reportOf({
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf('piston_diameter: { new: 4.1220 to 4.1230, wear: { min: 4.1200 } }'),
    'e/session.yaml': sessionOf(
      'teardown',
      '- { measure: piston_diameter, with: mic, at: { 1: 4.1215, 2: 4.1180, 3: 4.1225, 4: 4.1225 } }',
    ),
  });
  const { engine, registry, state } = report;
  if (state === undefined) throw new Error('no session');
  const titles = planPage(workPlan(engine, registry, state)).jobs.map(({ title }) => title);
  expect(titles).toEqual([
    'renew piston 2',
    'renew piston 1',
    'weigh and balance pistons, for renew pistons',
  ]);
  expect(waitingTexts(report, state, closingOf(report, state))[0]).toBe('parts: renew pistons');
});
