import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { reuseFindings, reuseKinds } from './reuse.ts';

export const MISSING: FindingKind = {
  code: 'torque/missing',
  severity: 'warning',
  means: 'An engine was rebuilt, and nobody has logged that one of its joints was tightened.',
  matters: 'A joint that was left finger tight looks like any other.',
  usually:
    'Check the joint and log it under `tightened`; take a sequence that is no longer used out of the folder.',
  example: 'rod bolts: nobody has logged that this joint was tightened (rod-bolts)',
};

export const historyKinds: readonly FindingKind[] = [...reuseKinds, MISSING];

/** What only shows across the sessions of an engine, by the session that it is reported of. */
export function historyFindings({
  sessions,
  sequences,
}: Engine): ReadonlyMap<SessionDocument, readonly Finding[]> {
  const found = new Map<SessionDocument, readonly Finding[]>();
  const report = (session: SessionDocument, findings: readonly Finding[]): void => {
    if (findings.length > 0) found.set(session, [...(found.get(session) ?? []), ...findings]);
  };
  const used = new Map<TorqueDocument, SessionDocument>();
  for (const session of sessions) {
    for (const log of session.tightened) {
      report(session, reuseFindings(log, session, used.get(log.document)));
      used.set(log.document, session);
    }
  }
  for (const build of buildsOf(sessions)) {
    const last = build.findLast(({ stage }) => stage === 'rebuild');
    if (last !== undefined) report(last, missing(sequences, build, last));
  }
  return found;
}

/** What lies between one teardown and the next belongs to one build. */
function buildsOf(sessions: readonly SessionDocument[]): readonly (readonly SessionDocument[])[] {
  const builds: SessionDocument[][] = [[]];
  for (const session of sessions) {
    if (session.stage === 'teardown') builds.push([]);
    else builds.at(-1)?.push(session);
  }
  return builds;
}

/** A trial assembly comes apart again: only what was tightened at a rebuild or in service stays tight. */
function missing(
  sequences: readonly TorqueDocument[],
  build: readonly SessionDocument[],
  last: SessionDocument,
): readonly Finding[] {
  const stays = build.filter(({ stage }) => stage === 'rebuild' || stage === 'service');
  const logged = new Set(stays.flatMap(({ tightened }) => tightened.map(({ document }) => document)));
  return sequences
    .filter((each) => !logged.has(each))
    .map((each) => {
      const message = `${each.joint.sequence.joint}: nobody has logged that this joint was tightened (${each.name})`;
      return finding(MISSING, last.start, message, { limitPlace: each.start });
    });
}
