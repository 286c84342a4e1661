import type { PlanContext } from '../context.ts';
import type { Job } from '../job.ts';
import { isChosenByFit } from '../operation.ts';

/** Of a part that is to be chosen, and not from the shelf: by what it is bought instead. */
export function withWhatItFits(job: Job, { registry }: PlanContext): Job {
  const { operation, part, rows } = job;
  if (operation !== 'choose' || part === undefined || isChosenByFit(part)) return job;
  const inputs = rows.flatMap(({ characteristic }) =>
    characteristic.derivations.flatMap((each) => each.inputs),
  );
  const others = inputs.flatMap((id) => registry.find(id) ?? []).filter(({ of }) => of !== part.id);
  const labels = [...new Set(others.map(({ label }) => label))].join(' and ');
  if (labels === '') return job;
  const line = `buy by the measured ${labels}: plan --fit chooses no ${part.plural}`;
  return { ...job, follows: [line] };
}
