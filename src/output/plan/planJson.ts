import { printingOf } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import { unitOf, unitOfRow } from '../../checks/judge/session.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { CutGroup } from '../../plan/work/cut.ts';
import type { Job } from '../../plan/work/job.ts';
import type { WorkPlan } from '../../plan/work/workPlan.ts';
import { type Fraction, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { placeJson } from '../check/placeJson.ts';
import { numberIn, shortened } from '../check/rowJson.ts';
import { positionJson } from '../positionJson.ts';
import { stepsLeft } from './cutWords.ts';
import { namesOf } from './jobWords.ts';
import { afterNotTaken } from './notTaken.ts';
import type { PlanPage } from './planPage.ts';

/** The plan for scripts; its shape is schemas/plan-output.json. Lengths are in `unit`. */
export function planJson({ engine, jobs, at, seenBefore }: WorkPlan, page: PlanPage, exit: number) {
  const unit = unitOf('length', engine);
  return {
    format: 'tenths.plan',
    version: 1,
    exit,
    engine: engine.document.name,
    path: engine.folder,
    session: at.name,
    unit: unit.name,
    answer: afterNotTaken(engine, page.answer),
    jobs: jobs.map((job, index) => ({
      ...jobJson(job, engine, unit),
      title: page.jobs[index]?.title ?? job.name,
    })),
    seen_before: seenBefore.map((row) => reasonJson(row, unitOfRow(row, engine))),
    cautions: page.cautions,
  };
}

function jobJson(job: Job, engine: Engine, unit: Unit) {
  const { name, operation, urgency, part, rows, found, suspects, serves, cut, deciders, follows } = job;
  const { unmeasured = [], wouldCut = [] } = job;
  const unitFor = (row: Pick<Row, 'characteristic'>): Unit => unitOfRow(row, engine);
  return {
    name,
    operation,
    urgency,
    part: part?.id ?? null,
    serves: serves === undefined ? null : namesOf(serves),
    why: rows.map((row) => reasonJson(row, unitFor(row))),
    found: found.map(({ on, is, remedy, depth, place }) => ({
      on: on.join(', '),
      is,
      do: remedy ?? null,
      depth: depth === undefined ? null : numberIn(depth.amount, unit),
      place: placeJson(place),
    })),
    suspects: suspects.flatMap(({ row, why }) =>
      why === undefined ? [] : [{ measure: row.characteristic.id, ...positionJson(row.position), why }],
    ),
    unmeasured: unmeasured.map(({ characteristic, ended }) => ({
      measure: characteristic.id,
      at: ended.map(positionJson),
    })),
    cuts: cut === undefined ? [] : cut.groups.map((group) => cutJson(group, unit)),
    steps_left: wouldCut.map((each) => ({ part: each.part.id, ...stepsLeft(each) })),
    deciders: deciders.map((each, index) => {
      const row = rows[index];
      return each === undefined || row === undefined
        ? null
        : { instruments: each.instruments, U: inUnit(each.expanded, printingOf(row, unitFor).unit) };
    }),
    follows,
  };
}

const reasonJson = ({ characteristic, position, routes: [judged], judgement }: Row, unit: Unit) => ({
  measure: characteristic.id,
  ...positionJson(position),
  unit: unit.name,
  least: judged === undefined ? null : numberIn(judged.least, unit),
  greatest: judged === undefined ? null : numberIn(judged.greatest, unit),
  verdict: judgement.verdict,
  past:
    judgement.past === undefined
      ? null
      : {
          side: judgement.past.side,
          band: judgement.past.limit.band,
          limit: numberIn(judgement.past.limit.amount, unit),
        },
});

function cutJson({ places, deciding }: CutGroup, unit: Unit) {
  const { choice, from, position, terms } = deciding;
  const step = choice.kind === 'step' ? choice : undefined;
  return {
    at: places.map((each) => positionJson(each.position)),
    deciding: positionJson(position),
    answer: choice.kind,
    steps_from: from,
    reach: choice.kind === 'not provable' ? null : numberIn(choice.reach, unit),
    step: step === undefined ? null : stepJson(step, unit),
    next: step?.next === undefined ? null : stepJson(step.next, unit),
    terms: terms.map(({ words, amount, times, isAssumed = false }) => ({
      words,
      amount: numberIn(amount, unit),
      times,
      assumed: isAssumed,
    })),
  };
}

const stepJson = (
  {
    step,
    spare,
  }: { step: { name: string; aim: Fraction; least: Fraction; greatest: Fraction }; spare: Fraction },
  unit: Unit,
) => ({
  size: step.name,
  least: numberIn(step.least, unit),
  greatest: numberIn(step.greatest, unit),
  aim: numberIn(step.aim, unit),
  over: numberIn(spare, unit),
});

const inUnit = (base: number, unit: Unit): number => shortened(base / toNumber(unit.factor));
