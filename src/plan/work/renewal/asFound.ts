import type { Position } from '../../../layout/position.ts';
import type { Job } from '../job.ts';

/** What somebody looked at and found to be machined is machined, and nothing is bought for it; at other places that is open. */
export function asFound(job: Job): readonly Job[] {
  const decided = job.found.filter(({ remedy }) => remedy === 'machine');
  if (job.operation !== 'machine or renew' || decided.length === 0) return [job];
  const isDecided = (position: Position): boolean =>
    decided.some(({ parts }) =>
      parts.some(({ positions }) => positions.length === 0 || positions.includes(position)),
    );
  const machined: Job = {
    ...job,
    operation: 'machine',
    name: job.name.replace(job.operation, 'machine'),
    rows: job.rows.filter(({ position }) => isDecided(position)),
    found: decided,
  };
  const rows = job.rows.filter(({ position }) => !isDecided(position));
  const found = job.found.filter((each) => !decided.includes(each));
  return rows.length + found.length === 0 ? [machined] : [machined, { ...job, rows, found }];
}
