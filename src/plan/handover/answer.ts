import { once } from '../../checks/once.ts';
import type { Engine } from '../../documents/assemble.ts';
import { type Grade, gradeText, sameGrade } from '../../documents/grades/grade.ts';
import type { Agreement } from '../../documents/planning/handedOver.ts';
import type { NamedWork } from '../../documents/planning/namedWork.ts';
import type { Parts } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { Job } from '../work/job.ts';
import { MACHINING } from '../work/operation.ts';
import { isWhole, lineFor, meantAt, sizedTwice } from './agreedLine.ts';
import type { Agreements, DatedAgreement } from './agreement.ts';

/** What a customer said to a job: yes; or yes to something else of the same part, which is no yes to this. */
export interface Answer {
  readonly kind: 'yes' | 'another';
  readonly agreement: Agreement;
  /** The lines of that agreement which are about the job. */
  readonly items: readonly NamedWork[];
  /** What it was said to: `0.010 under`, `grind main journal 3 alone`. */
  readonly to: string;
}

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
    const answer = answerOf(dated, job, engine);
    if (answer !== undefined) yield answer;
  }
}

/** ` of 2026-04-10`, of a yes that says its day. */
export const ofDate = ({ agreement: { date } }: Answer): string => (date === undefined ? '' : ` of ${date}`);

export const isAgreed = (job: Job, agreements: Agreements): boolean =>
  answerTo(job, agreements)?.kind === 'yes';

/** The lines of one yes together, for they may share the places of a job, or name one place twice. */
function answerOf(
  dated: DatedAgreement,
  job: Job,
  { parts, document: { layout } }: Engine,
): Answer | undefined {
  const { agreement } = dated;
  const known = { parts, layout };
  const answer = (kind: Answer['kind'], items: readonly NamedWork[], to: string): Answer => ({
    kind,
    agreement,
    items,
    to,
  });
  const lines = agreement.items.flatMap((item) => lineFor(item, job, known) ?? []);
  const items = lines.map(({ item }) => item);
  if (lines.length === 0) {
    const cuts = job.operation === 'renew' ? agreement.items.filter((each) => isCutOf(each, job, parts)) : [];
    return cuts.length === 0 ? undefined : answer('another', cuts, namesOf(cuts));
  }
  if (!isWhole(lines, job, known)) return answer('another', items, `${namesOf(items)} alone`);
  const [twice] = sizesOf(job).flatMap(({ position }) => sizedTwice(lines, position));
  if (twice !== undefined) return answer('another', twice, `two sizes at one place, ${namesOf(twice)}`);
  const then = once(() => sizesThen(dated, job));
  const isSame = sizesOf(job).every(({ position, grade }) => {
    const meant = meantAt(lines, position) ?? then();
    return meant.length === 0 || meant.some((each) => sameGrade(each, grade));
  });
  if (isSame) return answer('yes', items, namesOf(items));
  const sized = items.filter(({ grade }) => grade !== undefined);
  if (sized.length > 1) return answer('another', sized, namesOf(sized));
  const [grade] = sized.flatMap((each) => each.grade ?? []);
  return answer('another', items, gradesText(grade === undefined ? then() : [grade]));
}

const namesOf = (items: readonly NamedWork[]): string => items.map(({ name }) => name).join(' and ');

const gradesText = (grades: readonly Grade[]): string =>
  [...new Set(grades.map((each) => gradeText(each)))].join(', ');

const isCutOf = ({ operation, parts: at }: NamedWork, { part }: Job, parts: Parts): boolean =>
  operation !== undefined &&
  MACHINING.includes(operation) &&
  part !== undefined &&
  at.length > 0 &&
  at.every((each) => parts.within(part).includes(each.part));

/** To which size each place of a job is cut. */
const sizesOf = ({ cut }: Job): readonly { readonly position: Position; readonly grade: Grade }[] =>
  (cut?.groups ?? []).flatMap(({ places, deciding: { choice } }) =>
    choice.kind === 'step' ? places.map(({ position }) => ({ position, grade: choice.step.grade })) : [],
  );

/** Those that the same job had on the plan that was agreed to. */
const sizesThen = ({ plan }: DatedAgreement, { name, cut }: Job): readonly Grade[] =>
  cut === undefined
    ? []
    : plan().flatMap((job) => (job.name === name ? sizesOf(job).map(({ grade }) => grade) : []));
