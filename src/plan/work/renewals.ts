import type { PlanContext } from './context.ts';
import type { Job } from './job.ts';
import { jobName } from './operation.ts';

/** What somebody saw and wrote down to be renewed, by the part; words that name no part stand for themselves. */
export const renewals = ({ found }: PlanContext): readonly Job[] =>
  found
    .filter(({ remedy }) => remedy === 'renew')
    .map((each) => {
      const part = each.parts[0]?.part;
      return {
        name: part === undefined ? `renew ${each.on.join(', ')}` : jobName('renew', part),
        operation: 'renew',
        part,
        urgency: 'must',
        rows: [],
        found: [each],
        serves: undefined,
        cut: undefined,
        deciders: [],
        follows: [],
      };
    });
