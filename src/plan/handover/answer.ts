import type { Engine } from '../../documents/assemble.ts';
import { type Grade, gradeText, sameGrade } from '../../documents/grades/grade.ts';
import type { Agreement } from '../../documents/planning/handedOver.ts';
import { coverOf, isDoneBy, type NamedWork, plainName } from '../../documents/planning/namedWork.ts';
import type { Parts } from '../../layout/part.ts';
import type { Job } from '../work/job.ts';
import { placesOf, titleOf } from '../work/jobTitle.ts';
import { MACHINING } from '../work/operation.ts';
import type { Agreements, DatedAgreement } from './agreement.ts';

/** What a customer said to a job: yes; or yes to something else of the same part, which is no yes to this. */
export type Answer =
  | { readonly kind: 'yes'; readonly agreement: Agreement; readonly item: NamedWork }
  | {
      readonly kind: 'another';
      readonly agreement: Agreement;
      readonly item: NamedWork;
      /** `to 0.010 under`, `to main journal 3 alone`. */
      readonly to: string;
    };

/** The yes where there is one, else the latest word on the same part. What serves other jobs is agreed to with any of them. */
export function answerTo(job: Job, agreements: Agreements): Answer | undefined {
  let latest: Answer | undefined;
  for (const answer of answersTo(job, agreements)) {
    if (answer.kind === 'yes') return answer;
    latest = answer;
  }
  for (const each of job.serves ?? []) {
    const answer = answerTo(each, agreements);
    if (answer?.kind === 'yes') return answer;
  }
  return latest;
}

/** The earliest first, and none behind the one that is enough: a size that was left open is looked for in the plan of its day. */
function* answersTo(job: Job, { engine, all }: Agreements): Iterable<Answer> {
  for (const dated of all) {
    for (const item of dated.agreement.items) {
      const answer = answerOf(item, dated, job, engine);
      if (answer !== undefined) yield answer;
    }
  }
}

/** ` of 2026-04-10`, of a yes that says its day. */
export const ofDate = ({ agreement: { date } }: Answer): string => (date === undefined ? '' : ` of ${date}`);

export const isAgreed = (job: Job, agreements: Agreements): boolean =>
  answerTo(job, agreements)?.kind === 'yes';

function answerOf(
  item: NamedWork,
  dated: DatedAgreement,
  job: Job,
  { parts, document: { layout } }: Engine,
): Answer | undefined {
  const said = { agreement: dated.agreement, item };
  const cover = coverOfJob(item, job, { parts, layout });
  if (cover === 'none') {
    const isInstead = job.operation === 'renew' && isCutOf(item, job, parts);
    return isInstead ? { kind: 'another', ...said, to: item.name } : undefined;
  }
  if (cover === 'some') return { kind: 'another', ...said, to: `${item.name} alone` };
  const asked = sizesOf(job);
  const meant = item.grade === undefined ? sizesThen(dated, job) : [item.grade];
  const isSame = meant.length === 0 || asked.every((each) => meant.some((one) => sameGrade(one, each)));
  return isSame
    ? { kind: 'yes', ...said }
    : { kind: 'another', ...said, to: meant.map((each) => gradeText(each)).join(', ') };
}

type KnownPlaces = Parameters<typeof titleOf>[1] & { readonly parts: Parts };

/** By the name of a job, by its line on the page, or by what is done to which parts. */
function coverOfJob(item: NamedWork, job: Job, known: KnownPlaces): 'all' | 'some' | 'none' {
  const names = [job.name, titleOf(job, known)].map(plainName);
  if (names.includes(plainName(item.name))) return 'all';
  const isChosenAnew = item.operation === 'renew' && job.operation === 'choose';
  if (job.part === undefined || !(isChosenAnew || isDoneBy(item, job.operation))) return 'none';
  const places = placesOf(job);
  // A job that names no place is done to all of the part.
  const at = places.length > 0 ? places : known.layout.positionsOf(job.part.family);
  const cover = coverOf(item.parts, job.part, at, known.parts);
  // Renewing some of what is chosen is a job of its own, and no half yes.
  return isChosenAnew && cover === 'some' ? 'none' : cover;
}

/** Whether any line of a plan is meant, in whole or in part. */
export const isLineOf = (
  item: NamedWork,
  jobs: readonly Job[],
  { parts, document: { layout } }: Engine,
): boolean => jobs.some((job) => coverOfJob(item, job, { parts, layout }) !== 'none');

const isCutOf = ({ operation, parts: at }: NamedWork, { part }: Job, parts: Parts): boolean =>
  operation !== undefined &&
  MACHINING.includes(operation) &&
  part !== undefined &&
  at.length > 0 &&
  at.every((each) => parts.within(part).includes(each.part));

/** To which sizes a job cuts. */
const sizesOf = ({ cut }: Job): readonly Grade[] =>
  (cut?.groups ?? []).flatMap(({ deciding: { choice } }) =>
    choice.kind === 'step' ? [choice.step.grade] : [],
  );

/** Those that the same job had on the plan that was agreed to. */
const sizesThen = ({ plan }: DatedAgreement, { name, cut }: Job): readonly Grade[] =>
  cut === undefined ? [] : plan().flatMap((job) => (job.name === name ? sizesOf(job) : []));
