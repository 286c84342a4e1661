import type { Engine } from '../../../documents/assemble.ts';
import { placesMeant } from '../../../documents/planning/namedWork.ts';
import type { Observation } from '../../../documents/session/observations.ts';
import type { Position } from '../../../layout/position.ts';
import { relateOne } from '../../../layout/relate.ts';
import type { Job } from '../job.ts';
import { placesOf } from '../jobTitle.ts';
import { isChosenByFit } from '../operation.ts';
import { byName } from '../seen.ts';
import { mostUrgent } from '../urgency.ts';

/** What is renewed of parts that are chosen anew at the same places is one job with the choice: the chosen ones are new. */
export function renewedByChoice(jobs: readonly Job[], engine: Engine): readonly Job[] {
  const choices = jobs.filter(
    ({ operation, urgency, part }) =>
      operation === 'choose' && urgency !== 'may' && part !== undefined && isChosenByFit(part),
  );
  const shared = jobs.flatMap((job) => {
    const choice = choices.find(({ part }) => job.operation === 'renew' && part === job.part);
    return choice === undefined ? [] : [{ job, choice, ...shares(job, choice, engine) }];
  });
  return jobs.flatMap((job) => {
    const renewal = shared.find((each) => each.job === job);
    if (renewal !== undefined) return isEmpty(renewal.left) ? [] : { ...job, ...renewal.left };
    const { rows } = withoutRenewed(job, jobs, engine);
    if (rows.length === 0 && job.rows.length > 0) return [];
    const given = shared.filter(({ choice, taken }) => choice === job && !isEmpty(taken));
    return {
      ...job,
      urgency: mostUrgent([job, ...given.map((each) => each.job)]),
      rows: [...rows, ...given.flatMap(({ taken }) => taken.rows)],
      found: [...job.found, ...given.flatMap(({ taken }) => taken.found)],
    };
  });
}

/** What is renewed is fitted to its target when the new one is chosen. */
function withoutRenewed(job: Job, jobs: readonly Job[], engine: Engine): Pick<Job, 'rows'> {
  const { part, operation, urgency, rows } = job;
  if (operation !== 'choose' || urgency !== 'may' || part?.family.isSingle !== false) return { rows };
  const { layout } = engine.document;
  const renewed = jobs
    .filter((each) => each.operation === 'renew' && each.part === part)
    .flatMap((each) => placesMeant(part, placesOf(each, layout), { layout }));
  return { rows: rows.filter(({ position }) => !renewed.includes(position)) };
}

type Reasons = Pick<Job, 'rows' | 'found'>;

const isEmpty = ({ rows, found }: Reasons): boolean => rows.length + found.length === 0;

/** What a choice takes over of the reasons for a renewal, and what is left of them at other places. */
function shares(job: Job, choice: Job, engine: Engine): { readonly taken: Reasons; readonly left: Reasons } {
  const { layout } = engine.document;
  const places = placesOf(choice, layout);
  const isOfAll = job.found.some(({ parts }) =>
    parts.some(({ positions, isOneOfMany }) => positions.length === 0 && isOneOfMany !== true),
  );
  // A groove of a piston lies at its ring.
  const placeOf = (position: Position): Position =>
    (job.part && relateOne(layout, position, job.part.family)) ?? position;
  const isTaken = (position: Position): boolean => isOfAll || places.includes(placeOf(position));
  const pieces = job.found.flatMap((whole) => byName(whole, engine));
  return {
    taken: {
      rows: job.rows.filter(({ position }) => isTaken(position)),
      found: pieces.flatMap((each) => narrowed(each, isTaken, isOfAll)),
    },
    left: {
      rows: job.rows.filter(({ position }) => !isTaken(position)),
      found: pieces.flatMap((each) => narrowed(each, (position) => !isTaken(position), !isOfAll)),
    },
  };
}

/** What was seen at some of its places; what names no place is kept or left as a whole. */
function narrowed(
  seen: Observation,
  isMeant: (position: Position) => boolean,
  isPlaceless: boolean,
): readonly Observation[] {
  const parts = seen.parts.flatMap((at) => {
    const positions = at.positions.filter(isMeant);
    const isKept = at.positions.length === 0 ? isPlaceless : positions.length > 0;
    return isKept ? [{ ...at, positions }] : [];
  });
  return parts.length === 0 ? [] : [{ ...seen, parts }];
}
