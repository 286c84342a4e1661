import { isAt } from '../../../checks/history/dependsOn.ts';
import type { Observation } from '../../../documents/session/observations.ts';
import type { Part } from '../../../layout/part.ts';
import type { Position } from '../../../layout/position.ts';
import type { PartAt } from '../../../layout/readPart.ts';
import type { PlanContext } from '../context.ts';
import type { Job } from '../job.ts';
import { placesOf } from '../jobTitle.ts';
import { MACHINING } from '../operation.ts';
import { byName, whatIsLeft } from '../seen.ts';
import { mostUrgent, urgencyOf } from '../urgency.ts';

/**
 * Nothing is cut, straightened or renewed of what is renewed itself or with its whole: why it would have been is said at the
 * renewal.
 */
export function withoutWorkOnRenewed(jobs: readonly Job[], context: PlanContext): readonly Job[] {
  const renewals = jobs.flatMap((job) => {
    const at = renewedBy(job);
    return at === undefined ? [] : [{ job, at }];
  });
  const takerOf = (job: Job, isTaken: (at: PartAt) => boolean): Job | undefined =>
    isEnded(job) ? renewals.find((each) => each.job !== job && isTaken(each.at))?.job : undefined;
  const rows = jobs.flatMap((job) =>
    job.rows.map((row) => ({
      job,
      row,
      taker: takerOf(job, (at) => isWithin(job.part, row.position, at, context)),
    })),
  );
  const found = jobs.flatMap((job) =>
    job.found.flatMap((whole) =>
      byName(whole, context.engine).map((each) => ({
        job,
        whole,
        each,
        taker: takerOf(job, (at) => isAllWithin(job.part, each, at, context)),
      })),
    ),
  );
  return jobs
    .map((job) => {
      const left = found.filter((of) => of.job === job && of.taker === undefined);
      const [rowsTaken, foundTaken] = [
        rows.filter(({ taker }) => taker === job),
        found.filter(({ taker }) => taker === job),
      ];
      return {
        ...job,
        urgency: mostUrgent([
          job,
          { urgency: urgencyOf(rowsTaken.map(({ row }) => row)) },
          ...foundTaken.map((each) => each.job),
        ]),
        rows: [...rows.filter((of) => of.job === job && of.taker === undefined), ...rowsTaken].map(
          ({ row }) => row,
        ),
        found: [
          ...job.found.flatMap((whole) => {
            const named = left.filter((of) => of.whole === whole).map(({ each }) => each);
            return named.length === 0 ? [] : [whatIsLeft(whole, named)];
          }),
          ...foundTaken.map(({ each }) => each),
        ],
      };
    })
    .filter((left, index) => !isEmptied(left, jobs[index]));
}

const ENDED: readonly Job['operation'][] = [...MACHINING, 'machine or renew', 'renew'];

/** Shells and pistons are chosen by --fit in any case; of other parts the new one is the other size. */
const isEnded = ({ operation, part }: Job): boolean =>
  ENDED.includes(operation) ||
  (operation === 'choose' && part?.sized?.liesIn === undefined && part?.id !== 'piston');

const isEmptied = ({ rows, found }: Job, before: Job | undefined): boolean =>
  rows.length + found.length === 0 && before !== undefined && before.rows.length + before.found.length > 0;

/** What a job renews, and where; undefined where it renews nothing, or one of several and nobody says which. */
function renewedBy(job: Job): PartAt | undefined {
  const { operation, part, found } = job;
  if (operation !== 'renew' || part === undefined) return undefined;
  const positions = placesOf(job);
  const isAll =
    (part.family.isSingle && positions.length === 0) ||
    found.some(({ parts }) =>
      parts.some((each) => each.part === part && each.positions.length === 0 && each.isOneOfMany !== true),
    );
  return isAll || positions.length > 0 ? { part, positions } : undefined;
}

const isWithin = (
  part: Part | undefined,
  position: Position,
  at: PartAt,
  { registry, engine }: PlanContext,
): boolean => part !== undefined && isAt(part.id, position, at, registry, engine.document.layout);

/** Of something seen at several places each has to be renewed. */
function isAllWithin(
  part: Part | undefined,
  { parts }: Observation,
  at: PartAt,
  context: PlanContext,
): boolean {
  if (part === undefined || !context.registry.parts.within(at.part).includes(part)) return false;
  const seen = parts.filter((each) => each.part === part);
  return (
    at.positions.length === 0 ||
    seen.every(
      ({ positions }) => positions.length > 0 && positions.every((each) => isWithin(part, each, at, context)),
    )
  );
}
