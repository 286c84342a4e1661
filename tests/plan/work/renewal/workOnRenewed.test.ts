import { expect, it } from 'vitest';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { ENGINE, limitsOf, REGISTER, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

/** Jobs of an engine whose rod 2 is bent by so much, as `renew connecting rod 2, must: rod 2`. */
function jobsFor(bend: string, found: string): readonly string[] {
  const read = `- { measure: rod_bend, at: { 1: 0.0005, 2: ${bend}, 3: 0.0005, 4: 0.0005 } }\n`;
  const context = contextOf({
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf('rod_bend: { new: { max: 0.0010 }, wear: { max: 0.0020 } }'),
    'e/session.yaml': sessionOf('teardown', read.repeat(2), `found: [${found}]\n`),
  });
  return jobsOf(context).map((job) => {
    const seen = job.found.flatMap(({ on }) => on).join(', ');
    return `${titleOf(job, context.engine.document)}, ${job.urgency}: ${seen}`;
  });
}

it.each<readonly [string, string, string, readonly string[]]>([
  [
    'bent, and seen to be',
    '0.0060',
    '{ on: rod 2, is: bent, do: machine }',
    ['renew connecting rod 2, must: rod 2'],
  ],
  [
    'bent, and seen to be with another',
    '0.0060',
    '{ on: [rod 2, rod 3], is: bent, do: machine }',
    ['machine connecting rod 3, must: rod 3', 'renew connecting rod 2, must: rod 2'],
  ],
  [
    'bent less than is out, and seen to be nothing that can stay',
    '0.0015',
    '{ on: rod 2, is: bent, do: machine }',
    ['renew connecting rod 2, must: rod 2'],
  ],
  [
    'bent, and seen to be one that is not named',
    '0.0060',
    '{ on: rod, is: bent, do: machine }',
    ['renew connecting rod 2, must: rod'],
  ],
  [
    'bent, and seen to be with all others',
    '0.0060',
    '{ on: rods, is: bent, do: machine }',
    ['machine connecting rods 1, 3, 4, must: rods', 'renew connecting rod 2, must: rods'],
  ],
  [
    'bent, and named by itself and with all others',
    '0.0060',
    '{ on: [rod 2, rods], is: bent, do: machine }',
    ['machine connecting rods 1, 3, 4, must: rods', 'renew connecting rod 2, must: rod 2, rods'],
  ],
  [
    'bent, and seen to be with another under one name',
    '0.0060',
    '{ on: rods 2 and 3, is: bent, do: machine }',
    ['machine connecting rod 3, must: rods 2 and 3', 'renew connecting rod 2, must: rods 2 and 3'],
  ],
  [
    'bent, and of which the others are to be machined, as the customer chose',
    '0.0060',
    '{ on: rods, is: bent, do: machine }]\nagreed: [{ by: Owner, items: ["machine connecting rods 1, 3, 4"] }',
    ['machine connecting rods 1, 3, 4, must: rods', 'renew connecting rod 2, must: rods'],
  ],
  [
    'bent, and of which the others are to be renewed, as the customer chose',
    '0.0060',
    '{ on: [rod 2, rod 3], is: bent, do: machine }]\nagreed: [{ by: Owner, items: [renew connecting rod 3] }',
    ['renew connecting rods 2, 3, must: rod 2, rod 3'],
  ],
])('a rod that is %s has one job', (_, bend, found, jobs) => expect(jobsFor(bend, found)).toEqual(jobs));

it('a whole that is renewed has all that is out of it among its reasons, fits between two of its parts too', () => {
  const context = contextOf({
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(
      'pump_body_clearance: { new: { max: 0.006 }, wear: { max: 0.010 } }\npump_tip_clearance: { new: { max: 0.005 }, wear: { max: 0.008 } }\npump_end_clearance: { new: { max: 0.003 }, wear: { max: 0.005 } }',
    ),
    'e/session.yaml': sessionOf(
      'teardown',
      '- { measure: pump_body_clearance, value: 0.012 }\n- { measure: pump_tip_clearance, value: 0.0095 }\n- { measure: pump_end_clearance, value: 0.002 }',
      'found: [{ on: oil pump, is: loose, do: renew }]\n',
    ),
  });
  expect(
    jobsOf(context).map(({ name, rows }) => [name, rows.map(({ characteristic: { id } }) => id).sort()]),
  ).toEqual([['renew oil pump', ['pump_body_clearance', 'pump_tip_clearance']]]);
});
