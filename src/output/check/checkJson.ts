import type { Finding } from '../../checks/finding.ts';
import {
  type EngineReport,
  isState,
  type ReportedSession,
  type StateReport,
  unitsFor,
} from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { FollowUpState } from '../../checks/open/followUps.ts';
import type { SteppedBack } from '../../checks/value/steppedBack.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import { stemOf } from '../../documents/stem.ts';
import { coordinatesByAxis } from '../../layout/position.ts';
import type { Unit } from '../../quantity/units.ts';
import { positionJson } from '../positionJson.ts';
import { placeJson } from './placeJson.ts';
import { rowJson } from './rowJson.ts';
import { tightenedJson } from './tightenedJson.ts';

export const diagnosticJson = ({ code, message, help, place }: Diagnostic) => ({
  code,
  severity: 'error',
  message,
  help: help ?? null,
  place: placeJson(place),
});

export const findingJson = (finding: Finding) => ({
  code: finding.code,
  severity: finding.severity,
  message: finding.message,
  measure: finding.measure ?? null,
  position: finding.position ?? null,
  at: finding.at === undefined ? null : coordinatesByAxis(finding.at),
  place: placeJson(finding.place),
  limit_place: finding.limitPlace === undefined ? null : placeJson(finding.limitPlace),
  // Only where something is known: else there is nothing to say of it.
  ...(finding.known === undefined ? {} : { known: finding.known }),
});

export const followUpJson = ({ session, followUp, state, closedBy }: FollowUpState) => ({
  session: session.path,
  measure: followUp.measure.id,
  ...positionJson(followUp.position),
  state,
  closed_by: closedBy?.path ?? null,
});

export const engineJson = (
  { engine, rule }: EngineReport,
  chosen: readonly (ReportedSession | StateReport)[],
) => ({
  path: engine.folder,
  name: engine.document.name,
  judged: true,
  rule,
  state: chosen.flatMap((each) => (isState(each) ? [stateJson(each, unitsFor(engine))] : []))[0] ?? null,
  sessions: [
    ...chosen.flatMap((each) => (isState(each) ? [] : [sessionJson(each, unitsFor(engine))])),
    ...engine.notJudged.map(notJudgedJson),
  ],
});

/** An engine that no verdict can be given on, since a document that all stand on has a problem. */
export const notJudgedEngineJson = (folder: string, faulty: readonly string[]) => ({
  path: folder,
  name: null,
  judged: false,
  rule: null,
  state: null,
  sessions: [],
  faulty,
});

const notJudgedJson = (path: string) => ({
  name: stemOf(path),
  path,
  stage: null,
  date: null,
  judged: false,
  rows: [],
  findings: [],
  tightened: [],
  stepped_back: [],
  counts: {},
});

/** As the last session of a run leaves the engine. */
const stateJson = (state: StateReport, unitFor: (row: Row) => Unit) => ({
  ...sessionJson(state, unitFor),
  tightened: state.tightened.map(tightenedJson),
  run: state.run.map(({ path }) => path),
  last_known: state.lastKnown.map(({ row, date }) => lastKnownJson(row, date, unitFor)),
});

function lastKnownJson(row: Row, date: string, unitFor: (row: Row) => Unit) {
  const { measure, position, at, unit, least, greatest, read_in } = rowJson(row, unitFor);
  return { measure, position, at, unit, least, greatest, read_in, date };
}

function sessionJson({ session, rows, findings, steppedBack }: ReportedSession, unitFor: (row: Row) => Unit) {
  return {
    name: session.name,
    path: session.path,
    stage: session.stage,
    date: session.date,
    judged: true,
    rows: rows.map((row) => rowJson(row, unitFor)),
    findings: findings.map(findingJson),
    tightened: session.tightened.map(tightenedJson),
    stepped_back: steppedBack.map(steppedBackJson),
    counts: countsOf(rows),
  };
}

const steppedBackJson = ({ measure, position, written, work, place }: SteppedBack) => ({
  measure,
  ...positionJson(position),
  written,
  work: work.work,
  on: work.on.name,
  place: placeJson(place),
});

function countsOf(rows: readonly Row[]): Readonly<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const { judgement } of rows) {
    const verdict = judgement.verdict ?? 'without limits';
    counts[verdict] = (counts[verdict] ?? 0) + 1;
  }
  return counts;
}
