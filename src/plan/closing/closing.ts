import type { Finding } from '../../checks/finding.ts';
import { dependsOn } from '../../checks/history/dependsOn.ts';
import { statedCondition } from '../../checks/judge/condition.ts';
import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { FollowUpState } from '../../checks/open/followUps.ts';
import { isOfOthers } from '../../checks/value/equalRoutes.ts';
import { plainName } from '../../documents/planning/handedOver.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import type { PlanContext } from '../work/context.ts';
import { BOXES } from './boxes.ts';

/** What stands between an engine and closing it up. */
export interface Closing {
  /** Out, undecided or left out, and not conceded. */
  readonly rows: readonly Row[];
  /** Known by a machine shop's figures alone: accepted when they were measured here. */
  readonly unproven: readonly Row[];
  /** Of used parts beyond the limits of new ones, which nobody said is to be used again. */
  readonly undecided: readonly Row[];
  /** Conceded: told, and no hindrance. */
  readonly conceded: readonly Row[];
  /** Characteristics that have limits and were measured nowhere since the last work, and what else checks say. */
  readonly findings: readonly Finding[];
  readonly found: readonly Observation[];
  readonly followUps: readonly FollowUpState[];
  /** Joints of the engine that no session of its run says were tightened. */
  readonly untightened: readonly TorqueDocument[];
  readonly boxes: readonly Box[];
}

export interface Box {
  readonly what: string;
  readonly isRequired: boolean;
  /** Who ticked it. */
  readonly by: string | undefined;
}

const OPEN: readonly Row['judgement']['verdict'][] = ['out', 'undecided', 'missing'];

/** Findings of a state that say that something is not as it must be before an engine is closed. */
const TOLD: readonly string[] = ['session/unmeasured', 'instrument/overdue', 'source/unstated'];
const TOLD_AREAS: readonly string[] = ['torque/', 'concession/'];

export function closingOf(context: PlanContext, { followUps }: EngineReport): Closing {
  const { engine, state, found } = context;
  const { rows, findings } = state;
  return {
    rows: rows.filter(({ judgement }) => OPEN.includes(judgement.verdict)),
    unproven: rows.filter(({ routes: [judged] }) => judged !== undefined && isOfOthers(judged.route)),
    undecided: state.session.stage === 'rebuild' ? rows.filter((row) => isUsedAgain(row, context)) : [],
    conceded: rows.filter(({ judgement }) => judgement.verdict === 'accepted'),
    findings: findings.filter(
      ({ code, severity }) =>
        TOLD.includes(code) || (severity !== 'remark' && TOLD_AREAS.some((area) => code.startsWith(area))),
    ),
    found,
    followUps: followUps.filter((each) => each.state === 'open'),
    untightened: engine.sequences.filter((each) => !isTightened(each, state)),
    boxes: boxesOf(context),
  };
}

/** Worn, said to be used, and not found fit for use by anybody in the run. */
function isUsedAgain({ judgement, characteristic, position }: Row, context: PlanContext): boolean {
  const { engine, registry, state } = context;
  if (judgement.verdict !== 'worn') return false;
  const earlier = state.run.slice(0, -1).reverse();
  const around = { engine, registry, session: state.session, earlier };
  if (statedCondition(around, characteristic, position)?.band !== 'wear') return false;
  return !state.run.some(({ observations }) =>
    observations.some(
      ({ remedy, parts }) =>
        remedy === 'reuse' &&
        parts.some((part) => dependsOn(characteristic, position, part, registry, engine.document.layout)),
    ),
  );
}

const isTightened = ({ name }: TorqueDocument, { tightened }: StateReport): boolean =>
  tightened.some(({ document }) => document.name === name);

/** The usual boxes, those that the shop requires in its own words, and who ticked each. */
function boxesOf({ engine, state }: PlanContext): readonly Box[] {
  const required = engine.planning.required;
  const confirmed = [engine.document.handedOver, ...state.run.map(({ handedOver }) => handedOver)].flatMap(
    (each) => each.confirmed,
  );
  const by = (what: string): string | undefined =>
    confirmed.findLast((each) => plainName(each.what) === plainName(what))?.by;
  const isIn = (what: string): boolean => required.some((each) => plainName(each) === plainName(what));
  const own = required.filter((what) => !BOXES.some((each) => plainName(each) === plainName(what)));
  return [...BOXES, ...own].map((what) => ({ what, isRequired: isIn(what), by: by(what) }));
}

/** Nothing that documents state is open, but for what was conceded; and each box that the shop requires is ticked. */
export const mayClose = (closing: Closing): boolean => openCount(closing) === 0;

export const openCount = (closing: Closing): number => {
  const { rows, unproven, undecided, findings, found, untightened, boxes } = closing;
  const lists = [rows, unproven, undecided, findings, found, untightened, boxes.filter(isUnticked)];
  return lists.reduce((sum, { length }) => sum + length, 0);
};

const isUnticked = ({ isRequired, by }: Box): boolean => isRequired && by === undefined;
