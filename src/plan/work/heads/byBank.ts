import { BANK } from '../../../layout/family.ts';
import type { Layout } from '../../../layout/layout.ts';
import type { Position } from '../../../layout/position.ts';
import { positionsMeant } from '../../../layout/readPart.ts';
import { relateOne } from '../../../layout/relate.ts';
import type { Job } from '../job.ts';
import { byName } from '../seen.ts';

type Known = Parameters<typeof byName>[1];

/** The bank that something belongs to. */
export const bankOf = (position: Position, layout: Layout): Position | undefined =>
  relateOne(layout, position, BANK);

/**
 * The heads of a vee are castings of their own: each is agreed to, carried away and bought by itself. Those that are called by
 * their cylinders, and of which no figure is out, say themselves which they are.
 */
export function byBank(job: Job, engine: Known): readonly Job[] {
  const { layout } = engine.document;
  const { part, at: given, operation, rows, found } = job;
  if (part?.family !== BANK) return [job];
  const seen = found.flatMap(({ parts }) => parts.flatMap((each) => positionsMeant(each, layout)));
  const isCalled =
    given === undefined && rows.length === 0 && seen.every(({ family }) => family === part.calledBy);
  const banks = [...rows.map(({ position }) => position), ...(isCalled ? [] : seen)]
    .map((position) => bankOf(position, layout))
    .filter((bank) => bank !== undefined);
  return banks.length === 0
    ? [{ ...job, name: `${operation} ${part.label}` }]
    : layout
        .positionsOf(BANK)
        .filter((bank) => banks.includes(bank))
        .map((at) => ({ ...atBank(job, at, engine), at, name: `${operation} ${part.label} ${at.name}` }));
}

/** What of a job is done in one bank. */
export function atBank(job: Job, bank: Position, engine: Known): Job {
  const { layout } = engine.document;
  const isHere = (position: Position): boolean => bankOf(position, layout) === bank;
  return {
    ...job,
    rows: job.rows.filter(({ position }) => isHere(position)),
    found: job.found
      .flatMap((whole) => byName(whole, engine))
      .flatMap((seen) => {
        const parts = seen.parts.flatMap((each) => {
          const positions = positionsMeant(each, layout).filter(isHere);
          return positions.length > 0 || each.isOneOfMany ? [{ ...each, positions }] : [];
        });
        return parts.length === 0 ? [] : [{ ...seen, parts }];
      }),
    cut: job.cut && {
      ...job.cut,
      groups: job.cut.groups.flatMap((group) => {
        const places = group.places.filter(({ position }) => isHere(position));
        return places.length === 0 ? [] : [{ ...group, places }];
      }),
    },
  };
}

/** One of the heads that was seen to need it, and nobody says which, is the one of which a figure says so. */
export const withoutPlace = (jobs: readonly Job[]): readonly Job[] => {
  const isUnplaced = ({ part, at }: Job): boolean => part?.family === BANK && at === undefined;
  const placed = (job: Job): Job | undefined =>
    jobs.find(
      ({ part, operation, at }) => part === job.part && operation === job.operation && at !== undefined,
    );
  return jobs
    .filter((job) => !isUnplaced(job) || placed(job) === undefined)
    .map((job) => ({
      ...job,
      found: [
        ...job.found,
        ...jobs.filter((each) => isUnplaced(each) && placed(each) === job).flatMap(({ found }) => found),
      ],
    }));
};
