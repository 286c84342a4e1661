import { expect, it } from 'vitest';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { ENGINE, limitsOf, REGISTER, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

const BORES =
  '- { measure: cylinder_bore, with: bore, at: { 1: 4.1315, 2: 4.1255, 3: 4.1255, 4: 4.1255 } }\n';

/** Of an engine whose first bore is out, and whose first and third pistons are loose. */
function jobsWith(plan: string): readonly string[] {
  const context = contextOf({
    'shop.yaml': `kind: shop\nunits: { length: in }\n${plan}`,
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(
      'cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }\npiston_clearance: { new: 0.0030 to 0.0050 }',
    ),
    'e/session.yaml': sessionOf(
      'teardown',
      `${BORES}${BORES}- { measure: piston_diameter, with: mic, at: { 1: 4.1215, 2: 4.1215, 3: 4.1175, 4: 4.1215 } }`,
    ),
  });
  return jobsOf(context)
    .filter(({ serves }) => serves === undefined)
    .map((job) => titleOf(job, context.engine.document));
}

it.each([
  ['all, where all bores are cut together', '', ['bore cylinders 1 to 4']],
  [
    'what runs in it alone, where each bore is cut apart',
    'plan: { separate: [cylinders] }\n',
    ['bore cylinder 1', 'choose piston 3'],
  ],
])('a bore that is cut has new pistons with it: %s', (_, plan, jobs) =>
  expect([...jobsWith(plan)].sort()).toEqual(jobs),
);
