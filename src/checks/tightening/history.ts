import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { TighteningLog } from '../../documents/tightening/tightened.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';

const REUSED: FindingKind = {
  code: 'torque/reused',
  severity: 'error',
  means:
    'Fasteners that must not be used twice were tightened again, and the log does not say that they were new.',
  matters:
    'A bolt that was once taken to yield has less left, and breaks at the torque that is right for a new one.',
  usually: 'Fit new ones; if they were new, write `fasteners: new` in the log.',
  example:
    'rod bolts: fasteners that must not be used twice were tightened in 2026-03-02-trial already, and the log does not say that these were new',
};
const MISSING: FindingKind = {
  code: 'torque/missing',
  severity: 'warning',
  means: 'An engine was rebuilt, and nobody has logged that one of its joints was tightened.',
  matters: 'A joint that was left finger tight looks like any other.',
  usually:
    'Check the joint and log it under `tightened`; take a sequence that is no longer used out of the folder.',
  example: 'rod bolts: nobody has logged that it was tightened (rod-bolts)',
};

export const historyKinds: readonly FindingKind[] = [REUSED, MISSING];

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
      report(session, reused(log, session, used.get(log.document)));
      used.set(log.document, session);
    }
  }
  for (const build of buildsOf(sessions)) {
    const last = build.findLast(({ stage }) => stage === 'rebuild');
    if (last !== undefined) report(last, missing(sequences, build, last));
  }
  return found;
}

function reused(
  { document, fasteners, span }: TighteningLog,
  session: SessionDocument,
  before: SessionDocument | undefined,
): readonly Finding[] {
  const { reuse, sequence } = document.joint;
  if (reuse !== 'once' || fasteners === 'new') return [];
  if (fasteners !== 'reused' && before === undefined) return [];
  const message =
    fasteners === 'reused'
      ? `${sequence.joint}: fasteners that must not be used twice were used again`
      : `${sequence.joint}: fasteners that must not be used twice were tightened in ${before?.name} already, and the log does not say that these were new`;
  return [finding(REUSED, session.placeOf(span), message, { limitPlace: document.start })];
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
      const message = `${each.joint.sequence.joint}: nobody has logged that it was tightened (${each.name})`;
      return finding(MISSING, last.start, message, { limitPlace: each.start });
    });
}
