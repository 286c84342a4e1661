import type { Registry } from '../../characteristics/registry.ts';
import type { StateReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { planContext } from './context.ts';
import type { Job } from './job.ts';
import { jobsOf } from './jobs.ts';

/** What is to be done to an engine, in the order of work. */
export interface WorkPlan {
  readonly engine: Engine;
  /** The session that leaves it so. */
  readonly at: SessionDocument;
  readonly jobs: readonly Job[];
}

export const workPlan = (engine: Engine, registry: Registry, state: StateReport): WorkPlan => ({
  engine,
  at: state.session,
  jobs: jobsOf(planContext(engine, registry, state)),
});
