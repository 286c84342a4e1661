import type { EngineReport, ReportedSession, StateReport } from '../../checks/judge/report.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { STAGES } from '../../documents/session/stage.ts';
import { stemOf } from '../../documents/stem.ts';
import { UsageError } from '../usage.ts';

/** What of an engine a run is about: where it stands now, unless sessions are asked for. */
export interface SessionChoice {
  /** A path, a file stem, a unique part of a stem, or a stage (the latest of it). */
  readonly session?: string | undefined;
  /** Every session, as it found the engine. */
  readonly all?: boolean | undefined;
}

/**
 * `named` are the files and folders of the command line that bear on this engine, by the path under which they are
 * reported. Session files alone choose those sessions; the engine's folder, or any other file of it, where it stands.
 */
export function chooseSessions(
  { sessions, engine, state }: EngineReport,
  choice: SessionChoice,
  named: readonly string[],
): readonly (ReportedSession | StateReport)[] {
  if (choice.session !== undefined) return sessionNamed(choice.session, sessions);
  if (choice.all === true) return sessions;
  const isSession = (path: string): boolean =>
    engine.notJudged.includes(path) || sessions.some((each) => each.session.path === path);
  const chosen = sessions.filter((each) => named.includes(each.session.path));
  if (named.length > 0 && named.every(isSession)) return chosen;
  return state === undefined ? [] : [state];
}

/** None where the engine has no such session: another engine of the run may. */
export function sessionNamed(name: string, sessions: readonly ReportedSession[]): readonly ReportedSession[] {
  const named = documentsNamed(
    name,
    sessions.map((each) => each.session),
  );
  return sessions.filter((each) => named.includes(each.session));
}

/** By path, by file name, by a part of it in any case, or by stage (the latest of it), in that order. */
export function documentsNamed(
  name: string,
  sessions: readonly SessionDocument[],
): readonly SessionDocument[] {
  const asked = name.replace(/^\.\//, '');
  const stem = /\.ya?ml$/.test(asked) ? stemOf(asked) : asked;
  const byPath = sessions.filter(({ path }) => path === asked || path.endsWith(`/${asked}`));
  const byStem = sessions.filter((each) => each.name === stem);
  const byPart = sessions.filter((each) => each.name.toLowerCase().includes(stem.toLowerCase()));
  const byStage = sessions.filter(({ stage }) => stage === name).slice(-1);
  // A stage's word stands in many names: where it singles none out it means the latest of that stage.
  const isStage = STAGES.some((stage) => stage === name);
  const parts = byPart.length === 1 || !isStage ? byPart : [];
  const found = [byPath, byStem, parts, byStage].find((each) => each.length > 0) ?? [];
  if (found.length > 1) {
    const names = found.map((each) => each.name).join(', ');
    throw new UsageError(
      `${name} is part of the names of several sessions: ${names}`,
      'write more of the name',
    );
  }
  return found;
}
