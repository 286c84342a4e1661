import type { Observation } from '../../../documents/session/observations.ts';
import type { Layout } from '../../../layout/layout.ts';
import type { Job } from '../job.ts';
import { placesOf } from '../jobTitle.ts';

/** What was seen to be warped is what the straightedge found: one job, and no part is bought for it. */
export function withWarpedSurfaced(jobs: readonly Job[], layout: Layout): readonly Job[] {
  const surfacings = jobs.filter(({ operation }) => operation === 'surface');
  const takerOf = (job: Job, seen: Observation): Job | undefined =>
    // Where the customer chose to have it machined, that is the line that was agreed to.
    job.operation === 'machine or renew' && WARPED.test(seen.is)
      ? surfacings.find((each) => each.part === job.part && isAllAt(seen, each, layout))
      : undefined;
  return jobs.flatMap((job) => {
    const left = job.found.filter((seen) => takerOf(job, seen) === undefined);
    const taken = jobs.flatMap((each) => each.found.filter((seen) => takerOf(each, seen) === job));
    const isTaken = left.length + job.rows.length === 0 && job.found.length > 0;
    if (isTaken) return [];
    return [{ ...job, urgency: taken.length > 0 ? 'must' : job.urgency, found: [...left, ...taken] }];
  });
}

const WARPED = /\b(?:warp|distort|bowed|(?:not|out of) flat)/i;

function isAllAt({ parts }: Observation, surfacing: Job, layout: Layout): boolean {
  const places = placesOf(surfacing, layout);
  return parts
    .filter(({ part }) => part === surfacing.part)
    .every(
      ({ part, positions, isOneOfMany }) =>
        part.family.isSingle ||
        // Nobody says which head it is, and the straightedge does.
        isOneOfMany === true ||
        (positions.length > 0 && positions.every((each) => places.includes(each))),
    );
}
