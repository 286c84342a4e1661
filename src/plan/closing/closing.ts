import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Finding } from '../../checks/finding.ts';
import { statedCondition } from '../../checks/judge/condition.ts';
import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import { UNMEASURED } from '../../checks/judge/session.ts';
import type { FollowUpState } from '../../checks/open/followUps.ts';
import { RELEASED_OPEN } from '../../checks/open/ofPlan.ts';
import { MISSING } from '../../checks/tightening/history.ts';
import { isOfOthers } from '../../checks/value/equalRoutes.ts';
import type { BrokenDocument } from '../../documents/assemble.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import { type PlanContext, planContext } from '../work/context.ts';
import { isFoundFit } from '../work/renewal/usedAgain.ts';
import { type Box, boxesOf, openBoxes } from './boxes.ts';
import { unstatedJoints } from './unstatedJoints.ts';

/** What stands between an engine and closing it up: the one answer for every page, sheet and board. */
export interface Closing {
  /** Documents that have errors: what they say is not taken, so nobody knows what they leave open. */
  readonly broken: readonly BrokenDocument[];
  /** Out, undecided or left out, and not conceded. */
  readonly rows: readonly Row[];
  /** Known by a machine shop's figures alone: accepted when they were measured here. */
  readonly unproven: readonly Row[];
  /** Of used parts beyond the limits of new ones, which nobody said is to be used again. */
  readonly undecided: readonly Row[];
  /** Conceded: told, and no hindrance. */
  readonly conceded: readonly Row[];
  /** Warnings that somebody accepted: no hindrance either. */
  readonly accepted: readonly Finding[];
  /** They have limits and were measured nowhere since the last work. */
  readonly unmeasured: readonly Characteristic[];
  /** Of what is not measured: what ended since its joint was tightened in another way. */
  readonly again: readonly string[];
  /** What else checks warn of. */
  readonly findings: readonly Finding[];
  readonly found: readonly Observation[];
  readonly followUps: readonly FollowUpState[];
  /** Joints of the engine that no session of its run says were tightened, where the check does not say so. */
  readonly untightened: readonly TorqueDocument[];
  /** Joints that it must have, and that no torque document speaks of. */
  readonly unstated: readonly string[];
  readonly boxes: readonly Box[];
}

const OPEN: readonly Row['judgement']['verdict'][] = ['out', 'undecided', 'missing'];

/** Told by their rows, by their names, by what was found, or about what is open here. */
const TOLD: readonly string[] = [
  'reading/out',
  'reading/undecided',
  'reading/missing',
  'found/open',
  UNMEASURED.code,
  RELEASED_OPEN.code,
];

export function closingOf({ engine, registry, followUps }: EngineReport, state: StateReport): Closing {
  const context = planContext(engine, registry, state);
  const { rows, findings } = state;
  // At a rebuild the check names them all.
  const isTold = findings.some(({ code }) => code === MISSING.code);
  return {
    broken: engine.broken,
    rows: rows.filter(({ judgement }) => OPEN.includes(judgement.verdict)),
    unproven: rows.filter(({ routes: [judged] }) => judged !== undefined && isOfOthers(judged.route)),
    undecided: state.session.stage === 'rebuild' ? rows.filter((row) => isUndecided(row, context)) : [],
    conceded: rows.filter(({ judgement }) => judgement.verdict === 'accepted'),
    accepted: findings.filter(({ isAccepted }) => isAccepted === true),
    unmeasured: findings
      .filter(({ code }) => code === UNMEASURED.code)
      .flatMap(({ measure }) => (measure === undefined ? [] : (registry.find(measure) ?? []))),
    again: [...new Set(findings.flatMap(({ again }) => again ?? []))],
    findings: findings.filter(({ code, severity }) => severity !== 'remark' && !TOLD.includes(code)),
    found: context.found,
    followUps: followUps.filter((each) => each.state === 'open'),
    untightened: isTold ? [] : state.untightened,
    unstated: unstatedJoints(engine, registry),
    boxes: boxesOf(context),
  };
}

/** Worn, said to be used, and not found fit for use by anybody in the run. */
function isUndecided(row: Row, context: PlanContext): boolean {
  const { judgement, characteristic, position } = row;
  const { engine, registry, state } = context;
  if (judgement.verdict !== 'worn') return false;
  const earlier = state.run.slice(0, -1).reverse();
  const around = { engine, registry, session: state.session, earlier };
  if (statedCondition(around, characteristic, position)?.band !== 'wear') return false;
  return !isFoundFit(row, context);
}

/** Nothing that documents state is open, but for what was conceded; and each box that the shop requires is ticked. */
export const mayClose = (closing: Closing): boolean => openCount(closing) === 0;

export const openCount = (closing: Closing): number => {
  const { broken, rows, unproven, undecided, unmeasured, findings, found, untightened, boxes } = closing;
  const lists = [
    ...[broken, rows, unproven, undecided, unmeasured, findings, found, untightened],
    openBoxes(boxes),
  ];
  return lists.reduce((sum, { length }) => sum + length, 0);
};
