import { coverOf, placesMeant } from '../../../documents/planning/namedWork.ts';
import type { PlanContext } from '../context.ts';
import { followsOf } from '../follows.ts';
import type { Job } from '../job.ts';
import { placesOf } from '../jobTitle.ts';
import { jobName } from '../operation.ts';

/** What may be machined or renewed is what the customer chose last, where an agreement of the run names one of the two. */
export function asChosen(job: Job, { engine, registry, state }: PlanContext): Job {
  const { part } = job;
  if (job.operation !== 'machine or renew' || part === undefined) return job;
  const { layout, handedOver } = engine.document;
  const at = placesMeant(part, placesOf(job, layout), { layout });
  const since = state.run[0]?.date ?? '';
  const operation = [handedOver, ...state.run.map((each) => each.handedOver)]
    .flatMap(({ agreed }) => agreed.filter(({ date }) => date === undefined || date >= since))
    .flatMap(({ items }) => items)
    .filter(({ parts }) => coverOf(parts, part, at, registry.parts) === 'all')
    .flatMap((item) => (item.operation === 'machine' || item.operation === 'renew' ? item.operation : []))
    .at(-1);
  if (operation === undefined) return job;
  return { ...job, operation, name: jobName(operation, part), follows: followsOf({ operation, part }) };
}
