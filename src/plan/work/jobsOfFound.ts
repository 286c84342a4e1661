import { isSurfaceOf } from '../../checks/open/deepFound.ts';
import type { Operation } from '../../documents/planning/operations.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { Part } from '../../layout/part.ts';
import type { PlanContext } from './context.ts';
import { followsOf } from './follows.ts';
import type { Job } from './job.ts';
import { jobName } from './operation.ts';
import { renewedAs } from './renewal/wholeOf.ts';
import { seenByPart } from './seen.ts';

/** What somebody saw and nobody has dealt with, by the part; words that name no part stand for themselves. */
export const jobsOfFound = (context: PlanContext): readonly Job[] =>
  context.found.flatMap((each): readonly Job[] => {
    const { remedy, on, parts } = each;
    // What is to be used again as it is asks for a name, and for no work.
    if (remedy === 'reuse') return [];
    if (remedy !== 'renew' && remedy !== 'machine')
      return [jobOf('decide about', `decide about ${on.join(', ')}`, parts[0]?.part, each)];
    const { engine, registry } = context;
    const partOf = (part: Part): Part => (remedy === 'renew' ? renewedAs(part, registry.parts) : part);
    const operation = remedy === 'renew' ? remedy : 'machine or renew';
    return [...seenByPart(each, partOf, engine)].flatMap(([part, seen]) => {
      // Journals and bores that are to be machined have their cuts.
      if (remedy === 'machine' && part !== undefined && hasItsCut(part, context)) return [];
      const name = part === undefined ? `${operation} ${seen.on.join(', ')}` : jobName(operation, part);
      return [jobOf(operation, name, part, seen)];
    });
  });

/** A journal or bore, or what is called by it with its shells and housing, such as main 2; a head has none for its holes. */
const hasItsCut = (part: Part, { registry }: PlanContext): boolean =>
  !part.family.isSingle && registry.parts.all.some((cut) => isSurfaceOf(cut, part, registry));

const jobOf = (operation: Operation, name: string, part: Part | undefined, seen: Observation): Job => ({
  name,
  operation,
  part,
  urgency: 'must',
  rows: [],
  found: [seen],
  suspects: [],
  serves: undefined,
  cut: undefined,
  deciders: [],
  follows: followsOf({ operation, part }),
});
