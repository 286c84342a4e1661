import type { Observation } from '../../../documents/session/observations.ts';
import type { Layout } from '../../../layout/layout.ts';
import type { Position } from '../../../layout/position.ts';
import { relateOne } from '../../../layout/relate.ts';
import type { Job } from '../job.ts';
import { urgencyOf } from '../urgency.ts';

/** Parts that are renewed one by one: those that are out or broken must be, those that only are worn should. */
export function byUrgency(job: Job, layout: Layout): readonly Job[] {
  const { operation, part, rows, found, cut } = job;
  if ((operation !== 'renew' && operation !== 'machine or renew') || part?.family.isSingle !== false)
    return [job];
  const placeOf = (position: Position): Position => relateOne(layout, position, part.family) ?? position;
  const isBroken = (position: Position): boolean =>
    found.some((each) => isSeenAt(each, placeOf(position))) ||
    rows.some((row) => placeOf(row.position) === placeOf(position) && row.judgement.verdict === 'out');
  const worn = rows.filter(({ position }) => !isBroken(position));
  const groups = cut?.groups.filter(({ deciding: { position } }) =>
    worn.some((row) => row.position === position),
  );
  const mustRows = rows.filter((row) => !worn.includes(row));
  const mustGroups = cut?.groups.filter((group) => groups?.includes(group) !== true);
  if (worn.length === 0) return [job];
  const should: Job = {
    ...job,
    urgency: urgencyOf(worn),
    rows: worn,
    found: [],
    cut: cut && { ...cut, groups: groups ?? [] },
  };
  const must: Job = {
    ...job,
    urgency: 'must',
    rows: mustRows,
    cut: cut && { ...cut, groups: mustGroups ?? [] },
  };
  return mustRows.length + found.length + (mustGroups?.length ?? 0) === 0 ? [should] : [must, should];
}

const isSeenAt = ({ parts }: Observation, position: Position): boolean =>
  parts.some(
    ({ positions, isOneOfMany }) =>
      positions.includes(position) || (positions.length === 0 && isOneOfMany !== true),
  );
