import { expect, it } from 'vitest';
import { agreementsOf } from '../../../src/plan/handover/agreement.ts';
import { isAgreed } from '../../../src/plan/handover/answer.ts';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';
import { veeEngine } from '../veeEngine.ts';

function answersTo(item: string) {
  const context = contextOf(
    veeEngine('valve_lash_cold: { new: 0.25 to 0.35 }', {
      'e/a.yaml': sessionOf(
        'teardown',
        '- { measure: valve_lash_cold, at: { 5: { I: 0.30, E: 0.20 } } }',
        `agreed: { by: Owner, date: 2026-02-05, items: [${item}] }\n`,
      ),
    }),
  );
  const { engine, registry, state } = context;
  const agreements = agreementsOf(engine, registry, state.session);
  return {
    yes: jobsOf(context).flatMap((job) => (isAgreed(job, agreements) ? [job.name] : [])),
    told: (reportWithPlan(engine, registry, {}).state?.findings ?? []).filter(
      ({ code }) => code === 'plan/unknown-work',
    ).length,
  };
}

it.each(['adjust valve lash', '"adjust valve lash, cold"', 'Adjust valve_lash'])(
  'a yes to a figure needs no words behind its comma: %s',
  (item) => expect(answersTo(item)).toEqual({ yes: ['adjust valve lash, cold'], told: 0 }),
);

it.each(['adjust valve', 'adjust valve lash hot', 'adjust ignition timing'])(
  'and is none to another figure: %s',
  (item) => expect(answersTo(item)).toEqual({ yes: [], told: 1 }),
);
