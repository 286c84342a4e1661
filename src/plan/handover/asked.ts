import type { Observation } from '../../documents/session/observations.ts';
import type { Position } from '../../layout/position.ts';
import { awaitedBy } from '../order/awaited.ts';
import type { PlanContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import { OWN_WORK } from '../work/operation.ts';
import type { Agreements } from './agreement.ts';
import { byYes } from './byYes.ts';

/**
 * What a customer is asked: what comes with other work is in the price of that, to measure is the shop's own, and parts that a
 * cut waits for were agreed to with the cut. What is agreed to at some of its places is asked at the others.
 */
export function askedOf(jobs: readonly Job[], context: PlanContext, agreements: Agreements): readonly Job[] {
  const awaited = awaitedBy(context);
  return jobs
    .filter((job) => job.serves === undefined && !OWN_WORK.includes(job.operation))
    .flatMap((job) => {
      const come = new Set(awaited.flatMap(({ mate, places }) => (mate === job.part ? places : [])));
      return come.size === 0 ? job : (withoutPlaces(job, come, context) ?? []);
    })
    .flatMap((job) => byYes(job, agreements));
}

/** Undefined where nothing else asks for it. */
function withoutPlaces(
  job: Job,
  come: ReadonlySet<Position>,
  { engine: { document } }: PlanContext,
): Job | undefined {
  const { layout } = document;
  const comes = ({ parts }: Observation): boolean =>
    parts.every(({ part, positions, isOneOfMany }) =>
      (positions.length > 0 || isOneOfMany ? positions : layout.positionsOf(part.family)).every((position) =>
        come.has(position),
      ),
    );
  const rows = job.rows.filter(({ position }) => !come.has(position));
  const found = job.found.filter((each) => !comes(each));
  return rows.length + found.length === 0 ? undefined : { ...job, rows, found };
}
