import type { Part, Parts } from '../../layout/part.ts';
import type { Job } from '../work/job.ts';

/** The part that is carried to a machine shop for a job: the crankshaft for its journals, the block for its bores. */
export const carriedPart = ({ part }: Pick<Job, 'part'>, parts: Parts): Part | undefined =>
  part &&
  (parts.find(PRESSED_INTO[part.id] ?? '') ??
    parts.all.find((each) => CARRIED.includes(each.id) && parts.within(each).includes(part)) ??
    part);

/** By the id of what is pressed in, and is measured as no part of it. */
const PRESSED_INTO: Readonly<Record<string, string>> = { small_end_bush: 'rod', cam_bearing: 'block' };

const CARRIED: readonly string[] = ['crankshaft', 'block', 'head', 'camshaft', 'rod'];
