import { isAt } from '../../../checks/history/dependsOn.ts';
import type { Observation } from '../../../documents/session/observations.ts';
import type { Part } from '../../../layout/part.ts';
import type { Position } from '../../../layout/position.ts';
import type { PartAt } from '../../../layout/readPart.ts';
import type { PlanContext } from '../context.ts';
import type { Job } from '../job.ts';
import { placesOf } from '../jobTitle.ts';
import { isChosenByFit, MACHINING } from '../operation.ts';
import { asOne, byName } from '../seen.ts';
import { mostUrgent, urgencyOf } from '../urgency.ts';

/**
 * Nothing is cut, straightened or renewed of what is renewed itself or with its whole: why it would have been is said at the
 * renewal.
 */
export function withoutWorkOnRenewed(jobs: readonly Job[], context: PlanContext): readonly Job[] {
  const renewals = jobs.flatMap((job): readonly Renewal[] => {
    const at = renewedBy(job, context);
    return at === undefined ? [] : [{ job, at }];
  });
  const takerOf = (job: Job, isTaken: (at: PartAt) => boolean): Job | undefined => {
    const takers = isEnded(job) ? renewals.filter((each) => each.job !== job && isTaken(each.at)) : [];
    // A gear of a pump that is renewed whole is not renewed itself.
    const isOfAnother = ({ part }: PartAt): boolean =>
      takers.some(({ at }) => at.part !== part && context.registry.parts.within(at.part).includes(part));
    return takers.find(({ at }) => !isOfAnother(at))?.job;
  };
  const rows = jobs.flatMap((job) =>
    job.rows.map((row) => ({
      job,
      row,
      taker: takerOf(job, (at) => isWithin(job.part, row.position, at, context)),
    })),
  );
  const found = jobs.flatMap((job) =>
    job.found.flatMap((whole) =>
      byName(whole, context.engine).flatMap((piece) =>
        sharesOf(
          piece,
          job.part,
          isEnded(job) ? renewals.filter((each) => each.job !== job) : [],
          context,
        ).map((share) => ({ ...share, job, whole })),
      ),
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
            if (!found.some((of) => of.job === job && of.whole === whole && of.taker !== undefined))
              return [whole];
            const pieces = left.filter((of) => of.whole === whole).map(({ each }) => each);
            return pieces.length === 0 ? [] : [asOne(whole, pieces)];
          }),
          ...foundTaken.map(({ each }) => each),
        ],
      };
    })
    .filter((left, index) => !isEmptied(left, jobs[index]));
}

const ENDED: readonly Job['operation'][] = [...MACHINING, 'machine or renew', 'renew'];

/** Of parts that are not chosen by what they run with, the new one is the other size. */
const isEnded = ({ operation, part }: Job): boolean =>
  ENDED.includes(operation) || (operation === 'choose' && part !== undefined && !isChosenByFit(part));

const isEmptied = ({ rows, found }: Job, before: Job | undefined): boolean =>
  rows.length + found.length === 0 && before !== undefined && before.rows.length + before.found.length > 0;

/** What a job renews, and where; undefined where it renews nothing, or one of several and nobody says which. */
function renewedBy(job: Job, { engine }: PlanContext): PartAt | undefined {
  const { operation, part, found } = job;
  if (operation !== 'renew' || part === undefined) return undefined;
  const positions = placesOf(job, engine.document.layout);
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

interface Renewal {
  readonly job: Job;
  readonly at: PartAt;
}

/** A piece of what was seen, and the renewal that ends the work on it. */
interface Share {
  readonly each: Observation;
  readonly taker: Job | undefined;
}

/** What was seen at several places goes with the renewals there, and stays for the others: a rod is renewed or machined. */
function sharesOf(
  piece: Observation,
  part: Part | undefined,
  renewals: readonly Renewal[],
  context: PlanContext,
): readonly Share[] {
  const [renewal, ...others] = renewals;
  if (renewal === undefined) return [{ each: piece, taker: undefined }];
  const { within, left } = parted(piece, part, renewal.at, context);
  return [
    ...(within === undefined ? [] : [{ each: within, taker: renewal.job }]),
    ...(left === undefined ? [] : sharesOf(left, part, others, context)),
  ];
}

interface Parted {
  readonly within: Observation | undefined;
  readonly left: Observation | undefined;
}

function parted(piece: Observation, part: Part | undefined, at: PartAt, context: PlanContext): Parted {
  const [all, none] = [
    { within: piece, left: undefined },
    { within: undefined, left: piece },
  ];
  if (part === undefined || !context.registry.parts.within(at.part).includes(part)) return none;
  const seen = piece.parts.filter((each) => each.part === part);
  if (at.positions.length === 0 || seen.length === 0) return all;
  // Of rods one is bent, and one is renewed.
  if (seen.some(({ isOneOfMany }) => isOneOfMany)) return part === at.part ? all : none;
  const positions = seen.flatMap((each) =>
    each.positions.length > 0 ? each.positions : context.engine.document.layout.positionsOf(part.family),
  );
  const taken = positions.filter((each) => isWithin(part, each, at, context));
  if (taken.length === 0) return none;
  if (taken.length === positions.length) return all;
  const left = positions.filter((each) => !taken.includes(each));
  return {
    within: { ...piece, parts: [{ part, positions: taken }] },
    left: { ...piece, parts: [{ part, positions: left }] },
  };
}
