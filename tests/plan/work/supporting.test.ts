import { expect, it } from 'vitest';
import { ENGINE, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { jobsIn } from '../planOf.ts';

const LIMITS = `valve_guide_hole_bore: { new: 0.5010 to 0.5020, wear: { max: 0.5025 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }`;

const namesFor = (block: string): readonly string[] =>
  jobsIn({
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE.replace('mains: 3', 'valves: [I, E], mains: 3'),
    'e/limits.yaml': limitsOf(LIMITS),
    'e/session.yaml': sessionOf('teardown', block.repeat(2)),
  }).map(({ name }) => name);

it('pistons are weighed for bored cylinders, and not for the bored holes of a head', () => {
  const cylinders = namesFor('- { measure: cylinder_bore, with: bore, at: { 1: 4.1320, 2: 4.1255 } }\n');
  expect(cylinders).toEqual(expect.arrayContaining(['bore cylinders', 'weigh and balance pistons']));
  const holes = namesFor(
    '- { measure: valve_guide_hole_bore, with: bore, at: { 1I: 0.5040, 2I: 0.5015 } }\n',
  );
  expect(holes).toContain('bore valve guide holes');
  expect(holes).not.toContain('weigh and balance pistons');
});
