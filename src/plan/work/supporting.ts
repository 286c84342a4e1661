import type { Operation } from '../../documents/planning/operations.ts';
import type { PlanContext } from './context.ts';
import type { Job } from './job.ts';
import { jobName } from './operation.ts';
import { isProvenSound } from './renewal/provenSound.ts';
import { mostUrgent } from './urgency.ts';

/** What comes before and after other jobs whoever does them. */
interface Supporting {
  readonly operation: Operation;
  /** The id of the part that it is done to. */
  readonly part: string;
  /** Beside which jobs: by what is done, and to a part or to what it is assembled from. */
  readonly beside: (job: Job, isOfIt: boolean) => boolean;
}

const CUTTING: readonly Operation[] = ['straighten', 'line bore', 'surface', 'bore', 'grind', 'machine'];

/** Each can crack a crankshaft, and is wasted on a cracked one. */
const TO_TEST: readonly Operation[] = ['straighten', 'grind', 'machine'];

const SUPPORTING: readonly Supporting[] = [
  {
    operation: 'clean',
    part: 'crankshaft',
    beside: ({ operation }, isOfIt) => isOfIt && CUTTING.includes(operation),
  },
  {
    operation: 'clean',
    part: 'block',
    beside: ({ operation }, isOfIt) => isOfIt && CUTTING.includes(operation),
  },
  {
    operation: 'crack test',
    part: 'crankshaft',
    beside: ({ operation }, isOfIt) => isOfIt && TO_TEST.includes(operation),
  },
  {
    operation: 'weigh and balance',
    part: 'piston',
    beside: ({ operation, part, found }) =>
      (operation === 'bore' && part?.id === 'cylinder') ||
      // What was seen to be renewed may be chosen with the others.
      (part?.id === 'piston' && (operation === 'renew' || (operation === 'choose' && found.length > 0))),
  },
  {
    operation: 'wash',
    part: 'crankshaft',
    beside: ({ operation }, isOfIt) => isOfIt && CUTTING.includes(operation),
  },
  {
    operation: 'wash',
    part: 'block',
    beside: ({ operation }, isOfIt) => isOfIt && CUTTING.includes(operation),
  },
];

export const supportingJobs = (jobs: readonly Job[], context: PlanContext): readonly Job[] =>
  SUPPORTING.flatMap(({ operation, part: id, beside }) => {
    const { registry } = context;
    const part = registry.parts.find(id);
    if (part === undefined) return [];
    if (operation === 'crack test' && isProvenSound(context, part)) return [];
    const within = registry.parts.within(part);
    const served = jobs.filter((job) => beside(job, job.part !== undefined && within.includes(job.part)));
    if (served.length === 0) return [];
    return [
      {
        name: jobName(operation, part),
        operation,
        part,
        urgency: mostUrgent(served),
        rows: [],
        found: [],
        suspects: [],
        serves: served,
        cut: undefined,
        deciders: [],
        follows: [],
      },
    ];
  });
