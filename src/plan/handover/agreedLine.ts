import type { Engine } from '../../documents/assemble.ts';
import { type Grade, sameGrade } from '../../documents/grades/grade.ts';
import {
  coverOf,
  isDoneBy,
  type NamedWork,
  placesMeant,
  plainName,
} from '../../documents/planning/namedWork.ts';
import type { Parts } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { Job } from '../work/job.ts';
import { placesOf, titleOf } from '../work/jobTitle.ts';

/** A line of a yes that is about a job, and where: at all of it, or at some of its places. */
export interface Line {
  readonly item: NamedWork;
  readonly at: 'all' | readonly Position[];
}

type KnownPlaces = Parameters<typeof titleOf>[1] & { readonly parts: Parts };

/** By the name of a job, by its line on the page, or by what is done to which parts. */
export function lineFor(item: NamedWork, job: Job, known: KnownPlaces): Line | undefined {
  const names = [job.name, titleOf(job, known), nameOfFigure(job)].map(plainName);
  if (names.includes(plainName(item.name))) return { item, at: 'all' };
  const { part } = job;
  if (part === undefined || !(isChosenAnew(item, job) || isDoneBy(item, job.operation))) return undefined;
  const at = positionsOf(job, known).filter(
    (position) => coverOf(item.parts, part, [position], known.parts) === 'all',
  );
  return at.length === 0 ? undefined : { item, at };
}

/** `adjust valve lash`, cold or hot: a comma in a list has to be put in quotes. */
const nameOfFigure = ({ name, operation }: Job): string =>
  operation === 'adjust' || operation === 'find the cause' ? name.replace(/,.*/, '') : name;

const isChosenAnew = (item: NamedWork, job: Job): boolean =>
  item.operation === 'renew' && job.operation === 'choose';

function positionsOf(job: Job, known: KnownPlaces): readonly Position[] {
  const places = placesOf(job, known.layout);
  return job.part === undefined ? places : placesMeant(job.part, places, known);
}

const isAbout = ({ at }: Line, position: Position): boolean => at === 'all' || at.includes(position);

export const isWhole = (lines: readonly Line[], job: Job, known: KnownPlaces): boolean =>
  lines.some(({ at }) => at === 'all') ||
  positionsOf(job, known).every((position) => lines.some((line) => isAbout(line, position)));

/** The lines that name a size for a place, where they name several. */
export function sizedTwice(lines: readonly Line[], position: Position): readonly (readonly NamedWork[])[] {
  const sized = lines.filter((line) => isAbout(line, position)).map(({ item }) => item);
  const grades = sized.flatMap(({ grade }) => grade ?? []);
  const isOne = grades.every((each, _, [first]) => first === undefined || sameGrade(each, first));
  return isOne ? [] : [sized.filter(({ grade }) => grade !== undefined)];
}

/** A line that names a size holds before one that leaves it open; undefined where all of them do. */
export function meantAt(lines: readonly Line[], position: Position): readonly Grade[] | undefined {
  const grades = lines.filter((line) => isAbout(line, position)).flatMap(({ item }) => item.grade ?? []);
  return grades.length === 0 ? undefined : grades;
}

/** Whether any line of a plan is meant, in whole or in part. */
export const isLineOf = (
  item: NamedWork,
  jobs: readonly Job[],
  { parts, document: { layout } }: Engine,
): boolean => jobs.some((job) => lineFor(item, job, { parts, layout }) !== undefined);
