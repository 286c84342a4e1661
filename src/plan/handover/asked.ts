import { awaitedBy } from '../order/awaited.ts';
import type { PlanContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import { MEASURING } from '../work/operation.ts';

/**
 * What a customer is asked: what comes with other work is in the price of that, to measure is the shop's own, and parts that a
 * cut waits for were agreed to with the cut.
 */
export function askedOf(jobs: readonly Job[], context: PlanContext): readonly Job[] {
  const awaited = awaitedBy(context);
  const comesWithCut = ({ part, found, rows }: Job): boolean =>
    found.length === 0 &&
    rows.length > 0 &&
    awaited.some(
      ({ mate, places }) => mate === part && rows.every(({ position }) => places.includes(position)),
    );
  return jobs.filter(
    (job) => job.serves === undefined && !MEASURING.includes(job.operation) && !comesWithCut(job),
  );
}
