import type { Registry } from '../../characteristics/registry.ts';
import { once } from '../../checks/once.ts';
import { runsOf } from '../../checks/state/run.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Agreement } from '../../documents/planning/handedOver.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { planContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import { jobsOf } from '../work/jobs.ts';
import { OWN_WORK } from '../work/operation.ts';
import { engineAfter } from './engineAfter.ts';
import { judgedOnce } from './judgedOnce.ts';

/** What was agreed to in one run of an engine, and what the plans of that time asked for. */
export interface Agreements {
  readonly engine: Engine;
  readonly registry: Registry;
  /** The earliest first. */
  readonly all: readonly DatedAgreement[];
}

export interface DatedAgreement {
  readonly agreement: Agreement;
  /** The plan that was agreed to: of its own session, else of the latest before that had anything to be done but measuring. */
  readonly plan: () => readonly Job[];
  /** Of any session of the run, the nearest first. */
  readonly plans: () => Iterable<readonly Job[]>;
}

/** Of the run of one session, with all that came after it: a yes may be written later, or into the engine document. */
export function agreementsOf(engine: Engine, registry: Registry, session: SessionDocument): Agreements {
  const runs = runsOf(engine.sessions);
  const run = runs.find((each) => each.includes(session)) ?? [];
  const first = engine.sessions.indexOf(run[0] ?? session);
  const plans = run.map((_, index) => once(() => jobsAfter(engine, registry, first + index + 1)));
  const dated = (agreement: Agreement, index: number): DatedAgreement => {
    const nearest = [...plans.slice(0, index + 1).toReversed(), ...plans.slice(index + 1)];
    function* planned(): Iterable<readonly Job[]> {
      for (const each of nearest) yield each();
    }
    return { agreement, plans: planned, plan: () => firstWithWork(planned()) };
  };
  const isOfRun = ({ date }: Agreement): boolean => date === undefined || date >= (run[0]?.date ?? '');
  const onDate = (date: string | undefined): number =>
    Math.max(
      0,
      run.findLastIndex((each) => date !== undefined && each.date <= date),
    );
  const all = [
    ...engine.document.handedOver.agreed.filter(isOfRun).map((each) => dated(each, onDate(each.date))),
    ...run.flatMap(({ handedOver }, index) => handedOver.agreed.map((each) => dated(each, index))),
  ];
  return { engine, registry, all };
}

function firstWithWork(plans: Iterable<readonly Job[]>): readonly Job[] {
  for (const jobs of plans) if (jobs.some(({ operation }) => !OWN_WORK.includes(operation))) return jobs;
  return [];
}

/** What was to be done to an engine after so many of its sessions. */
function jobsAfter(engine: Engine, registry: Registry, count: number): readonly Job[] {
  const then = engineAfter(engine, count);
  const { state } = judgedOnce(then)(registry);
  return state === undefined ? [] : jobsOf(planContext(then, registry, state));
}
