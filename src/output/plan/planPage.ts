import type { Row } from '../../checks/judge/row.ts';
import { unitOfRow } from '../../checks/judge/session.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Operation } from '../../documents/planning/operations.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { unmeasuredOf } from '../../plan/closing/unmeasured.ts';
import { thicknessFits } from '../../plan/fit/thickness/thicknessFits.ts';
import { thicknessesFor } from '../../plan/order/thicknesses.ts';
import type { Job } from '../../plan/work/job.ts';
import { URGENCIES } from '../../plan/work/urgency.ts';
import type { WorkPlan } from '../../plan/work/workPlan.ts';
import type { Unit } from '../../quantity/units.ts';
import { type JobWords, jobWords, reasonTexts, titleText } from './jobWords.ts';
import { unmeasuredTexts } from './measureWords.ts';
import { thicknessWords } from './thicknessWords.ts';

/** A job in words, with the shims or buckets that set it right. */
export interface PlannedWords extends JobWords {
  readonly thicknesses: readonly string[];
}

/** What a plan says, for every way to print it. */
export interface PlanPage {
  readonly title: string;
  readonly folder: string;
  readonly standing: string;
  /** What must be done, should be, and may be, by name. */
  readonly answer: readonly string[];
  readonly jobs: readonly PlannedWords[];
  /** What the engine showed before it was taken apart. */
  readonly seenBefore: readonly string[];
  readonly cautions: readonly string[];
}

export function planPage(plan: WorkPlan): PlanPage {
  const { engine, jobs, at, context, seenBefore } = plan;
  const fits = thicknessFits(context);
  const unitFor = (row: Pick<Row, 'characteristic'>): Unit => unitOfRow(row, engine);
  return {
    title: `${engine.document.name}: what is to be done`,
    folder: engine.folder,
    standing: standing(engine, at),
    answer: answer(plan),
    jobs: jobs.map((job, index) => ({
      ...jobWords(job, jobs.slice(0, index), engine, unitFor),
      thicknesses: thicknessesFor(job, jobs, fits, context).map((each) => thicknessWords(each, engine)),
    })),
    seenBefore: reasonTexts(seenBefore, engine, unitFor),
    cautions:
      jobs.length === 0
        ? []
        : [
            ...CAUTIONS,
            ...CAUTIONS_OF.flatMap((each) =>
              jobs.some(({ operation }) => each.of.includes(operation)) ? each.text : [],
            ),
          ],
  };
}

export const standing = ({ folder }: Engine, { stage, date }: SessionDocument): string =>
  [folder === '.' ? '' : folder, `as ${stage} ${date} leaves it`].filter(Boolean).join(', ');

function answer({ jobs, context, engine }: WorkPlan): readonly string[] {
  const asked = jobs.filter(({ serves }) => serves === undefined);
  if (asked.length === 0) {
    const unmeasured = unmeasuredTexts(unmeasuredOf(context), engine);
    return unmeasured.length === 0
      ? [`nothing is to be done: ${ALL_INSIDE}`]
      : [[ALL_INSIDE, ...unmeasured].join('; ')];
  }
  return URGENCIES.flatMap((urgency) => {
    const names = asked
      .filter((job) => job.urgency === urgency)
      .map((job) => (isNamedInFull(job, asked) ? titleText(job, engine) : job.name));
    const mark = names.some((each) => each.includes(',')) ? '; ' : ', ';
    return names.length === 0 ? [] : [`${urgency}: ${names.join(mark)}`];
  });
}

/** What is measured, and what must be done at some places and should be at others. */
const isNamedInFull = ({ operation, name }: Job, asked: readonly Job[]): boolean =>
  operation === 'measure' ||
  operation === 'measure again' ||
  asked.filter((each) => each.name === name).length > 1;

const ALL_INSIDE = 'all that was measured is inside its limits';

const CAUTIONS_OF: readonly { readonly of: readonly Operation[]; readonly text: string }[] = [
  {
    of: ['clean', 'wash'],
    text: 'Caustic tanks burn, and eat aluminium: gloves and goggles. Holes are blown out away from faces.',
  },
];

const CAUTIONS: readonly string[] = [
  "The maker's manual comes first: its sizes, its last sizes, its order of work.",
  'Parts are heavy and springs are loaded: lift, support and relieve them as the manual says.',
  'Grinding, straightening and welding a crankshaft can crack it: test it before and after.',
];
