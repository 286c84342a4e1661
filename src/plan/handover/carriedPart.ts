import type { Part, Parts } from '../../layout/part.ts';
import type { Job } from '../work/job.ts';

/** The part that is carried to a machine shop for a job: the crankshaft for its journals, the block for its bores. */
export const carriedPart = ({ part }: Pick<Job, 'part'>, parts: Parts): Part | undefined =>
  part && (parts.all.find((each) => CARRIED.includes(each.id) && parts.within(each).includes(part)) ?? part);

const CARRIED: readonly string[] = ['crankshaft', 'block', 'head', 'camshaft', 'rod'];
