import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Operation } from '../../documents/planning/operations.ts';
import type { Part } from '../../layout/part.ts';
import type { PlanContext } from './context.ts';
import { type Cut, cutsOf, cutsWithin } from './cut.ts';
import { bySteps, isPastSteps } from './cutSteps.ts';
import { followsOf, onBanks, sizeFirst } from './follows.ts';
import { byBank, withoutPlace } from './heads/byBank.ts';
import { readAgainOnceSurfaced } from './heads/sunkValves.ts';
import { renewedWhereTooThin, withThickness } from './heads/tooThin.ts';
import { withWarpedSurfaced } from './heads/warped.ts';
import { inOrderOfWork, type Job, plain } from './job.ts';
import { jobsOfFound } from './jobsOfFound.ts';
import { measuringJobs } from './measuring/measuringJobs.ts';
import { jobName, remedyOf } from './operation.ts';
import { asFound } from './renewal/asFound.ts';
import { byUrgency } from './renewal/byUrgency.ts';
import { asChosen } from './renewal/chosen.ts';
import { withWhatItFits } from './renewal/chosenByMeasuring.ts';
import { comesWith } from './renewal/comesWith.ts';
import { isCracked } from './renewal/cracked.ts';
import { renewedByChoice } from './renewal/renewedByChoice.ts';
import { renewedOfSmallEnd } from './renewal/smallEnd.ts';
import { isUsedAgain } from './renewal/usedAgain.ts';
import { renewedAs } from './renewal/wholeOf.ts';
import { withoutWorkOnRenewed } from './renewal/workOnRenewed.ts';
import { supportingJobs } from './supporting.ts';
import { unevenWith } from './symptoms/linerSteps.ts';
import { isRepair, symptomsOf } from './symptoms/seenBefore.ts';
import { urgencyOf } from './urgency.ts';

/** All that is to be done to an engine as it stands, in the order of work. */
export function jobsOf(context: PlanContext): readonly Job[] {
  const cuts = cutsOf(context);
  const cutRows = new Set(cuts.flatMap(({ rows }) => rows));
  const left = context.state.rows.filter(
    (row) => !cutRows.has(row) && !comesWith(row, cuts, context) && !isUsedAgain(row, context),
  );
  const symptoms = symptomsOf(context);
  const found = askedBy(
    left.filter((row) => !symptoms.includes(row)),
    cuts,
    context,
  );
  const all = symptoms.length === 0 || found.some(isRepair) ? found : askedBy(left, cuts, context);
  return inOrderOfWork([...all, ...supportingJobs(all, context)]);
}

/** What figures that no cut brings back, cuts and what was seen ask for. */
function askedBy(rows: readonly Row[], cuts: readonly Cut[], context: PlanContext): readonly Job[] {
  const { layout } = context.engine.document;
  const asked = [...cuts.flatMap(cutJobs), ...measuringJobs(rows, context), ...remedyJobs(rows, context)];
  const byHead = (jobs: readonly Job[]): readonly Job[] =>
    joined(jobs.flatMap((job) => byBank(job, context.engine)));
  const chosen = (jobs: readonly Job[]): readonly Job[] => byHead(jobs.map((job) => asChosen(job, context)));
  const placed = byHead(withoutPlace(chosen([...asked, ...jobsOfFound(context)])));
  const surfaced = withWarpedSurfaced(placed, layout);
  const first = joined(surfaced.map((job) => renewedWhereTooThin(job, context)));
  // What is left beside a renewal is another line, and the customer may have chosen for that.
  const renewed = renewedByChoice(chosen(withoutWorkOnRenewed(first, context)), context.engine)
    .flatMap((job) => byUrgency(job, layout))
    .flatMap(asFound)
    .map((job) => onBanks(withThickness(withSteps(withWhatItFits(job, context), context), context), layout));
  return readAgainOnceSurfaced(renewed, layout);
}

/** Whoever wants a part renewed wants to know whether a step was left; of a cracked part none is. */
function withSteps(job: Job, context: PlanContext): Job {
  const { operation, part, found, rows, cut } = job;
  if (operation !== 'renew' || part?.family.isSingle !== true || cut !== undefined) return job;
  if (rows.some(isCracked) || found.some(({ is }) => /crack/i.test(is))) return job;
  return { ...job, wouldCut: cutsWithin(context, part) };
}

/** Bores beyond their last step are renewed by themselves; a journal that is takes its crankshaft along. */
function cutJobs(cut: Cut): readonly Job[] {
  if (cut.renews !== undefined) return [renewalOf(cut, cut.renews)];
  const { past, left } = bySteps(cut);
  return [
    ...(past === undefined ? [] : [renewalOf(past, cut.part)]),
    ...(left === undefined ? [] : [cutJob(left)]),
  ];
}

const renewalOf = (cut: Cut, part: Part): Job => ({
  ...plain,
  name: jobName('renew', part),
  operation: 'renew',
  part,
  urgency: 'must',
  rows: cut.rows,
  found: cut.found,
  follows: followsOf({ operation: 'renew', part }),
  cut: { ...cut, groups: cut.groups.filter(isPastSteps) },
});

function cutJob(cut: Cut): Job {
  const { part, urgency, rows, found, asksForSize } = cut;
  const operation = part.sized?.made === 'over' ? 'bore' : 'grind';
  // What has just been cut and is not right is no work for another step before anybody knows its size.
  if (asksForSize !== undefined) {
    const name = jobName('state the size', part);
    const follows = sizeFirst(asksForSize, operation);
    return { ...plain, name, operation: 'state the size', part, urgency, rows, found, follows };
  }
  const follows = followsOf({ operation, part });
  return { ...plain, name: jobName(operation, part), operation, part, urgency, rows, found, cut, follows };
}

/** Figures that are out, worn or off what the builder aims for, gathered by what brings them back. */
function remedyJobs(rows: readonly Row[], context: PlanContext): readonly Job[] {
  const { parts } = context.registry;
  return rows.flatMap((row): readonly Job[] => {
    const { verdict } = row.judgement;
    if (verdict !== 'out' && verdict !== 'worn' && verdict !== 'off target') return [];
    const smallEnd = renewedOfSmallEnd(row, context);
    const of = smallEnd ?? parts.find(row.characteristic.of ?? '');
    const operation = smallEnd === undefined ? remedyOf(row, of) : 'renew';
    // What is off its target is inside its limits: nothing is cut or renewed for that.
    if (verdict === 'off target' && operation !== 'choose') return [];
    const part = of && operation === 'renew' ? renewedAs(of, parts) : of;
    const name = remedyName(operation, part, unevenWith(row, context) ?? row.characteristic);
    const follows = followsOf({ operation, part });
    return [{ ...plain, name, operation, part, urgency: urgencyOf([row]), rows: [row], follows }];
  });
}

/** By the part, or by the figure where that is what is put right. */
function remedyName(operation: Operation, part: Part | undefined, { label }: Characteristic): string {
  if (operation === 'adjust') return `adjust ${label}`;
  if (part === undefined || operation === 'find the cause') return `${operation} of ${label}`;
  return jobName(operation, part);
}

/** Jobs of one name as one. */
function joined(jobs: readonly Job[]): readonly Job[] {
  const byName = new Map<string, Job>();
  for (const job of jobs) {
    const known = byName.get(job.name);
    byName.set(job.name, known === undefined ? job : together(known, job));
  }
  return [...byName.values()];
}

const together = (a: Job, b: Job): Job => ({
  ...a,
  urgency: a.urgency === 'must' || b.urgency === 'may' ? a.urgency : b.urgency === 'must' ? 'must' : 'should',
  rows: [...a.rows, ...b.rows],
  found: [...a.found, ...b.found],
  suspects: [...a.suspects, ...b.suspects],
  thicknesses: [...(a.thicknesses ?? []), ...(b.thicknesses ?? [])],
});
