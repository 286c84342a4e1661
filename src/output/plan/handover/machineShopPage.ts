import type { Registry } from '../../../characteristics/registry.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { unitOfRow } from '../../../checks/judge/session.ts';
import { foundText } from '../../../checks/open/found.ts';
import type { Engine } from '../../../documents/assemble.ts';
import { outText } from '../../../plan/closing/outText.ts';
import type { PistonFit } from '../../../plan/fit/pistonChoice.ts';
import type { Agreements } from '../../../plan/handover/agreement.ts';
import { answerTo, isAgreed, ofDate } from '../../../plan/handover/answer.ts';
import { byYes } from '../../../plan/handover/byYes.ts';
import { type Carried, carriedFor, carriedName } from '../../../plan/handover/carriedPart.ts';
import { markOf } from '../../../plan/handover/marks.ts';
import { sendingsOf } from '../../../plan/handover/sendings.ts';
import { atTheShop, isShopWork } from '../../../plan/handover/shopWork.ts';
import { isBoredHole } from '../../../plan/work/follows.ts';
import type { Job } from '../../../plan/work/job.ts';
import { placesOf, titleOf } from '../../../plan/work/jobTitle.ts';
import { placesText } from '../../../plan/work/placesText.ts';
import type { WorkPlan } from '../../../plan/work/workPlan.ts';
import type { Unit } from '../../../quantity/units.ts';
import { numberIn } from '../../check/rowJson.ts';
import { cutWords } from '../cutWords.ts';
import { endsOf } from '../figures.ts';
import { pistonTable } from '../fit/pistonTable.ts';
import { leftToSurface } from '../leftToSurface.ts';
import type { Page, Section, Values } from '../page.ts';
import { heldFigures, isLeastStated } from './heldFigures.ts';

/** What a machine shop is to do, of agreed work alone: a part, its mark, sizes, and what comes back with it. */
export function machineShopPage(
  { jobs }: WorkPlan,
  agreements: Agreements,
  pistons: PistonFit | undefined,
  about: readonly string[],
): Page {
  const { engine, registry } = agreements;
  const machining = jobs.filter((job) => isShopWork(job, engine)).flatMap((job) => byYes(job, agreements));
  const agreed = machining.filter((job) => isAgreed(job, agreements));
  const left = machining.filter((job) => job.serves === undefined && !agreed.includes(job));
  const parts = carriedFor(agreed, engine);
  return {
    title: `${engine.document.name}: work for the machine shop`,
    about: [...jobLine(engine), ...about],
    answer:
      parts.length > 0
        ? [`${parts.map(carriedName).join(', ')}; only what the customer agreed to stands here`]
        : [left.length > 0 ? NO_YES_YET : 'Nothing is left for a machine shop to do'],
    sections: [
      ...parts.flatMap((each) => partSections(each, each.jobs, pistons, engine, registry)),
      ...(parts.length === 0 ? [] : [{ title: 'back with it', lines: BACK }]),
      ...(left.length === 0
        ? []
        : [{ title: 'not agreed yet, not to be done', lines: left.map((job) => leftText(job, agreements)) }]),
    ],
    cautions: parts.length === 0 ? [] : CAUTIONS,
  };
}

const NO_YES_YET =
  'The customer has agreed to no machining yet: write the yes under `agreed:` in a session or in the engine document';

/** `grind main journals 1 to 7; the yes of 2026-04-10 is to 0.010 under`. */
function leftText(job: Job, agreements: Agreements): string {
  const title = titleOf(job, agreements.engine.document);
  const answer = answerTo(job, agreements);
  return answer?.kind === 'another' ? `${title}; the yes${ofDate(answer)} is to ${answer.to}` : title;
}

function jobLine({ document: { job } }: Engine): readonly string[] {
  const reported = [
    job.number === undefined ? undefined : `job ${job.number}`,
    job.serial === undefined ? undefined : `engine no. ${job.serial}`,
  ].filter((each) => each !== undefined);
  return reported.length === 0 ? [] : [reported.join(', ')];
}

function partSections(
  carried: Carried,
  jobs: readonly Job[],
  pistons: PistonFit | undefined,
  engine: Engine,
  registry: Registry,
): readonly Section[] {
  const mark = markOf(carried, engine);
  const [sent] = sendingsOf(carried, engine);
  const given =
    sent === undefined
      ? []
      : [
          `to ${sent.to}${sent.date === undefined ? '' : `, ${sent.date}`}${sent.due === undefined ? '' : `, back by ${sent.due}`}`,
        ];
  return [
    {
      title: `${carriedName(carried)}${mark === undefined ? ', no mark stated: mark it before it leaves' : `, marked ${mark}`}`,
      lines: given,
    },
    ...jobs.flatMap((job, index) => [
      jobSection(job, jobs.slice(0, index), engine, registry),
      ...(job.operation === 'bore' && job.part?.boredInto === undefined
        ? pistonSection(pistons, engine)
        : []),
    ]),
  ];
}

/** Sizes, what must be held beside them, and room for the shop's own figures: nothing else. */
function jobSection(job: Job, before: readonly Job[], engine: Engine, registry: Registry): Section {
  const unitFor = (row: Pick<Row, 'characteristic'>): Unit => unitOfRow(row, engine);
  const cuts = job.cut === undefined ? [] : cutWords(job.cut, engine, unitFor).flatMap(({ size }) => size);
  const measured =
    job.cut === undefined
      ? [...job.found.map(foundText), ...job.rows.map((row) => outText(row, unitFor))]
      : [];
  const figures = [...new Set(placesOf(job, engine.document.layout))]
    .map(({ name }) => `${name} ________`)
    .join('  ');
  const boxes = atTheShop(job, engine.document.layout);
  const same = before.find((each) => boxes.length > 0 && atTheShop(each, engine.document.layout) === boxes);
  return {
    title: titleOf(job, engine.document),
    values: cutValues(job, engine),
    lines: [
      ...cuts,
      ...measured,
      ...heldFigures(job, engine, registry),
      ...leftToSurface(job, unitFor).flatMap(({ size }) => size),
      ...(isBoredHole(job) ? [] : blanksFor(job, isLeastStated(job, engine, registry))),
      ...(figures === '' ? [] : [`your figures: ${figures}`]),
    ],
    boxes: same === undefined ? boxes : [`as for ${same.name}`],
  };
}

/** To what each group is cut. */
const cutValues = ({ cut }: Job, engine: Engine): readonly Values[] =>
  (cut?.groups ?? []).flatMap(({ places, deciding: { row, choice } }) => {
    if (choice.kind !== 'step') return [];
    const unit = unitOfRow(row, engine);
    const { name, aim } = choice.step;
    const at = placesText(
      places.map(({ position }) => position),
      engine.document.layout,
    );
    return [{ at, size: name, ...endsOf(choice.step, unit), aim: numberIn(aim, unit) }];
  });

/** Bores are finished to pistons that are in hand. */
function pistonSection(fit: PistonFit | undefined, engine: Engine): readonly Section[] {
  if (fit === undefined || !fit.isToBeBored || fit.places.length === 0) return [];
  const { table } = pistonTable(fit, engine);
  return [
    { title: 'finish each bore to its own piston, and mark both', ...(table === undefined ? {} : { table }) },
  ];
}

/** What no document of ours states, to be filled in from the manual. */
const BLANKS: Readonly<Partial<Record<Job['operation'], readonly string[]>>> = {
  'crack test': ['method ________  found ________'],
  grind: ['finish ________  fillet radius ________  thrust width ________ (by the manual)'],
  bore: ['finish and crosshatch ________ (by the manual)  torque plate ________'],
  surface: ['least height ________  finish ________ (by the manual)'],
};

const FINISH_ALONE: readonly string[] = ['finish ________ (by the manual)'];

const blanksFor = ({ operation }: Job, isLeastStated: boolean): readonly string[] =>
  operation === 'surface' && isLeastStated ? FINISH_ALONE : (BLANKS[operation] ?? []);

const BACK: readonly string[] = [
  'your figure of every place that you cut: ________________________________',
  'what was found on the way, cracks above all, before you go on: ask us',
  'the old shells, caps, bolts and plugs that came with it',
  'date and signature: ________________________________',
];

const CAUTIONS: readonly string[] = [
  'A part counts as accepted when we have measured it, washed and at room temperature.',
  "The maker's manual comes first. A cracked part is not machined.",
];
