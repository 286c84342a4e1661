import type { Registry } from '../../characteristics/registry.ts';
import type { StateReport } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type PlanContext, planContext } from './context.ts';
import type { Job } from './job.ts';
import { jobsOf } from './jobs.ts';
import { seenBefore } from './symptoms/seenBefore.ts';

/** What is to be done to an engine, in the order of work. */
export interface WorkPlan {
  readonly engine: Engine;
  readonly context: PlanContext;
  /** The session that leaves it so. */
  readonly at: SessionDocument;
  readonly jobs: readonly Job[];
  /** What the engine showed before it was taken apart, and is measured again after the rebuild. */
  readonly seenBefore: readonly Row[];
}

export function workPlan(engine: Engine, registry: Registry, state: StateReport): WorkPlan {
  const context = planContext(engine, registry, state);
  const jobs = jobsOf(context);
  return { engine, context, at: state.session, jobs, seenBefore: seenBefore(context, jobs) };
}
