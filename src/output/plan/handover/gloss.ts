import type { Operation } from '../../../documents/planning/operations.ts';
import { isBoredHole } from '../../../plan/work/follows.ts';
import type { Job } from '../../../plan/work/job.ts';

/** What a job is, for somebody who knows no engines. */
const GLOSSES: Readonly<Record<Operation, string>> = {
  measure: 'Something was not measured yet. We measure it before anything is decided.',
  'measure again':
    'A measurement of ours cannot decide, or does not look right. We measure again before anything is done.',
  'state the size':
    'The size of this part is not written down yet. We write it down before anything is done.',
  'decide about': 'We saw this and have not decided yet what it needs.',
  clean: 'Cleaned, so that cracks and wear can be seen.',
  'crack test':
    'Tested for cracks that cannot be seen. A cracked part is not worked on, and we ask you again.',
  straighten: 'It is bent, and is pressed straight.',
  'line bore': 'The seats of the main bearings are made round and in one line again.',
  surface: 'The face is machined flat, so that the gasket seals.',
  bore: 'The cylinders are bored larger and smoothed, and take new, larger pistons.',
  resize: 'The large end of the rod is made round again.',
  grind: 'The worn bearing surfaces are ground round again, smaller than before, and take thicker bearings.',
  renew: 'The part is replaced by a new one.',
  machine: 'It is machined, so that it is as it must be again.',
  'machine or renew': 'It is not as it must be: it is machined, or replaced where that cannot be done.',
  adjust: 'It is set again as the manual says.',
  choose: 'New ones of the size that fits are put in, so that the running clearance is right.',
  'find the cause': 'This is not as it should be. We look for the cause before anything is ordered.',
  'weigh and balance': 'The new parts are weighed, so that the engine runs smoothly.',
  wash: 'Washed after machining: what is left of it would ruin the engine.',
};

const BORED_HOLE = 'The hole is bored larger, and takes a new part that is larger outside.';

export function glossOf(job: Pick<Job, 'operation' | 'part'>): string {
  if (isBoredHole(job)) return BORED_HOLE;
  const { operation, part } = job;
  return operation === 'choose' && part !== undefined
    ? GLOSSES.choose.replace('ones', part.plural)
    : GLOSSES[operation];
}
