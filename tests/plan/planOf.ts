import { type PlanContext, planContext } from '../../src/plan/work/context.ts';
import type { Job } from '../../src/plan/work/job.ts';
import { workPlan } from '../../src/plan/work/workPlan.ts';
import { type Fraction, toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../src/quantity/units.ts';
import { type Files, reportOf, shopOf } from '../shopOf.ts';

/** What a plan is made from, of an engine read from texts alone, as its last session leaves it. */
export function contextOf(files: Files): PlanContext {
  const { engine, registry, state } = reportOf(files);
  if (state === undefined) throw new Error('no session');
  return planContext(engine, registry, state);
}

/** The plan of an engine read from texts alone, as its last session leaves it. */
export function jobsIn(files: Files): readonly Job[] {
  const { engine, state } = reportOf(files);
  if (state === undefined) throw new Error('no session');
  return workPlan(engine, shopOf(files).registry, state).jobs;
}

export const jobCalled = (name: string, files: Files): Job => {
  const jobs = jobsIn(files);
  const found = jobs.find((job) => job.name === name);
  if (found === undefined) throw new Error(`no job ${name} among ${jobs.map((job) => job.name).join(', ')}`);
  return found;
};

export const lengthIn = (unit: 'in' | 'mm', amount: Fraction, decimals = unit === 'in' ? 4 : 3): string =>
  toDecimal(fromBase(amount, unitNamed(unit)), decimals);
