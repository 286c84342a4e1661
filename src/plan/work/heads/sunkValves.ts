import type { Layout } from '../../../layout/layout.ts';
import type { Job } from '../job.ts';
import { bankOf } from './byBank.ts';

/** Surfacing brings the face down to a sunk valve: how deep it lies is known after that. Common practice, no source. */
export const readAgainOnceSurfaced = (jobs: readonly Job[], layout: Layout): readonly Job[] =>
  jobs.map((job) => {
    const sunk = job.rows.filter(({ characteristic: { id } }) => id === 'valve_recession');
    const first = jobs.find(
      ({ operation, part, at }) =>
        operation === 'surface' &&
        part?.id === 'head' &&
        sunk.some(({ position }) => at === undefined || bankOf(position, layout) === at),
    );
    if (first === undefined || job.part?.id !== 'valve_seat') return job;
    const again = `read valve recession again after ${first.name}: the valve lies less deep below the new face`;
    return { ...job, follows: [again, ...job.follows] };
  });
