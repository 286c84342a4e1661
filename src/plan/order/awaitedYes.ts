import type { Agreements } from '../handover/agreement.ts';
import { isAgreed } from '../handover/answer.ts';
import type { Job } from '../work/job.ts';
import { MACHINING } from '../work/operation.ts';
import type { NeededLine } from './orderLine.ts';

/** Whether nothing is bought for a job yet: metal is cut after a yes, and the engine of a customer waits for each. */
export function awaitsYes(job: Job, agreements: Agreements): boolean {
  const { customer } = agreements.engine.document.job;
  const isAsked = customer !== undefined || MACHINING.includes(job.operation);
  return isAsked && !isAgreed(job, agreements);
}

/** What waits for a yes and a size waits for the size all the same. */
export const afterYes = (line: NeededLine): NeededLine => ({
  ...line,
  when: line.when === 'now' ? 'after the yes' : line.when,
  for: `${line.for}, not agreed yet`,
});
