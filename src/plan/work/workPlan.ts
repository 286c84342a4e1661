import type { Registry } from '../../characteristics/registry.ts';
import type { StateReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type PlanContext, planContext } from './context.ts';
import type { Job } from './job.ts';
import { jobsOf } from './jobs.ts';

/** What is to be done to an engine, in the order of work. */
export interface WorkPlan {
  readonly engine: Engine;
  readonly context: PlanContext;
  /** The session that leaves it so. */
  readonly at: SessionDocument;
  readonly jobs: readonly Job[];
}

export function workPlan(engine: Engine, registry: Registry, state: StateReport): WorkPlan {
  const context = planContext(engine, registry, state);
  return { engine, context, at: state.session, jobs: jobsOf(context) };
}
