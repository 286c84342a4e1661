import type { Registry } from '../../characteristics/registry.ts';
import type { Operation } from '../../documents/planning/operations.ts';
import { isCut } from '../../documents/planning/settings.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { Part } from '../../layout/part.ts';
import type { PlanContext } from './context.ts';
import type { Job } from './job.ts';
import { jobName } from './operation.ts';
import { renewedAs } from './renewal/renewed.ts';

/** What somebody saw and nobody has dealt with, by the part; words that name no part stand for themselves. */
export const jobsOfFound = ({ found, registry }: PlanContext): readonly Job[] =>
  found.flatMap((each): readonly Job[] => {
    const operation = operationFor(each);
    const part = partFor(operation, each.parts[0]?.part, registry);
    // Journals and bores that are to be machined have their cuts.
    if (operation === undefined) return [];
    const words = `${operation} ${each.on.join(', ')}`;
    const name = part === undefined || operation === 'decide about' ? words : jobName(operation, part);
    return [
      {
        name,
        operation,
        part,
        urgency: 'must',
        rows: [],
        found: [each],
        suspects: [],
        serves: undefined,
        cut: undefined,
        deciders: [],
        follows: [],
      },
    ];
  });

const partFor = (operation: Operation | undefined, part: Part | undefined, { parts }: Registry) =>
  part && operation === 'renew' ? renewedAs(part, parts) : part;

function operationFor({ remedy, parts }: Observation): Operation | undefined {
  // What is to be used again as it is asks for a name, and for no work.
  if (remedy === 'reuse') return undefined;
  if (remedy === 'renew') return 'renew';
  if (remedy !== 'machine') return 'decide about';
  return parts.some(({ part }) => isCut(part)) ? undefined : 'machine or renew';
}
