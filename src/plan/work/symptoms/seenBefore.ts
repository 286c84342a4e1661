import type { Row } from '../../../checks/judge/row.ts';
import type { PlanContext } from '../context.ts';
import type { Job } from '../job.ts';
import { OWN_WORK } from '../operation.ts';

/** What an engine showed before it was taken apart, or would have: nobody can measure it on its parts. */
export function symptomsOf({ state: { rows, session } }: PlanContext): readonly Row[] {
  const isInPieces =
    session.stage === 'teardown' || session.stage === 'machined' || session.stage === 'trial';
  return rows.filter(({ characteristic: { isSymptom }, routes: [judged] }) =>
    judged === undefined
      ? isSymptom === true && isInPieces
      : isSymptom === true && judged.route.readIn.stage === 'teardown',
  );
}

/** Whether anything is found that may be the cause of a symptom: what is only measured or set again is not. */
export const isRepair = (job: Job): boolean =>
  job.urgency !== 'may' && job.operation !== 'adjust' && !OWN_WORK.includes(job.operation);

/** Symptoms that no job asks the cause of: they are measured again after the rebuild. */
export const seenBefore = (context: PlanContext, jobs: readonly Job[]): readonly Row[] =>
  symptomsOf(context).filter(
    (row) =>
      (row.judgement.verdict === 'out' || row.judgement.verdict === 'worn') &&
      !jobs.some(({ rows }) => rows.includes(row)),
  );
