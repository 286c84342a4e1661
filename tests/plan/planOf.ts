import type { Job } from '../../src/plan/work/job.ts';
import { workPlan } from '../../src/plan/work/workPlan.ts';
import { type Files, reportOf, shopOf } from '../shopOf.ts';

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
