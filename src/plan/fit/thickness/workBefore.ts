import { dependsOn } from '../../../checks/history/dependsOn.ts';
import type { Row } from '../../../checks/judge/row.ts';
import type { Operation } from '../../../documents/planning/operations.ts';
import type { PlanContext } from '../../work/context.ts';
import type { Job } from '../../work/job.ts';
import { placesOf } from '../../work/jobTitle.ts';

/** Work still to be done that changes what was read: a thickness is chosen by what is read after it. */
export const workBefore = (row: Row, jobs: readonly Job[], context: PlanContext): Job | undefined =>
  jobs.find((job) => changes(job, row, context));

/** A new liner has a flange of its own, a deck that is surfaced is lower, and a valve sinks into a seat that is cut. */
const CHANGING: readonly Operation[] = [
  'line bore',
  'surface',
  'grind',
  'machine',
  'machine or renew',
  'renew',
  'choose',
];

function changes(job: Job, { characteristic, position }: Row, { engine, registry }: PlanContext): boolean {
  const { operation, part, urgency } = job;
  if (part === undefined || urgency === 'may' || !CHANGING.includes(operation)) return false;
  const { layout } = engine.document;
  const changed = { part, positions: part.family.isSingle ? [] : placesOf(job, layout) };
  return dependsOn(characteristic, position, changed, registry, layout);
}
