import { expect, it } from 'vitest';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { limitsOf, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

it('a piston that is chosen anew is one job, and takes what its ring grooves ask for with it', () => {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'e/engine.yaml': 'kind: engine\nname: Saw\nlayout: { cylinders: 2, rings: [top] }\n',
    'e/limits.yaml': limitsOf(`piston_clearance: { new: 0.110 to 0.152, wear: { max: 0.300 } }
ring_groove_width: { new: 2.010 to 2.030, wear: { max: 2.080 } }`),
    'e/session.yaml': sessionOf(
      'teardown',
      `- { measure: piston_clearance, at: { 1: 0.130, 2: 0.310 } }
- { measure: ring_groove_width, at: { 1: { top: 2.050 }, 2: { top: 2.050 } } }`,
    ),
  });
  const jobs = jobsOf(context).filter(({ part, serves }) => part?.id === 'piston' && serves === undefined);
  expect(jobs.map((job) => titleOf(job, context.engine.document))).toEqual([
    'renew piston 1',
    'choose piston 2',
  ]);
  expect(jobs.map(({ rows }) => rows.map(({ characteristic: { id } }) => id))).toEqual([
    ['ring_groove_width'],
    ['piston_clearance', 'ring_groove_width'],
  ]);
});

it('a piston that is renewed is not chosen for its target as well', () => {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'e/engine.yaml': 'kind: engine\nname: Saw\nlayout: { cylinders: 2 }\n',
    'e/limits.yaml': limitsOf(`piston_clearance: { new: 0.110 to 0.152, target: 0.120 to 0.130 }
piston_diameter: { new: 99.870 to 99.890, wear: { min: 99.800 } }`),
    'e/session.yaml': sessionOf(
      'teardown',
      `- { measure: piston_clearance, at: { 1: 0.140, 2: 0.140 } }
- { measure: piston_diameter, at: { 1: 99.861, 2: 99.880 } }`,
    ),
  });
  const jobs = jobsOf(context).filter(({ part, serves }) => part?.id === 'piston' && serves === undefined);
  expect(jobs.map((job) => titleOf(job, context.engine.document))).toEqual([
    'renew piston 1',
    'choose piston 2',
  ]);
});
