import type { EngineReport, ReportedSession } from '../checks/report.ts';
import { STAGES } from '../documents/session.ts';
import { UsageError } from './usage.ts';

/** Which of an engine's sessions a run is about. */
export interface SessionChoice {
  /** A path, a file stem, a unique part of a stem, or a stage (the latest of it). */
  readonly session?: string | undefined;
  readonly latest?: boolean | undefined;
}

/** `files` are the session files that were named on the command line; none of them here chooses all. */
export function chooseSessions(
  { sessions }: EngineReport,
  choice: SessionChoice,
  files: ReadonlySet<string>,
): readonly ReportedSession[] {
  if (choice.session !== undefined) return sessionNamed(choice.session, sessions);
  if (choice.latest === true) return sessions.slice(-1);
  const named = sessions.filter((each) => files.has(each.session.path));
  return named.length > 0 ? named : sessions;
}

/** None where the engine has no such session: another engine of the run may. */
export function sessionNamed(name: string, sessions: readonly ReportedSession[]): readonly ReportedSession[] {
  const byPath = sessions.filter(({ session }) => session.path === name.replace(/^\.\//, ''));
  const byStem = sessions.filter(({ session }) => session.name === name);
  const byPart = sessions.filter(({ session }) => session.name.includes(name));
  const isStage = STAGES.some((stage) => stage === name);
  const byStage = isStage ? sessions.filter(({ session }) => session.stage === name).slice(-1) : [];
  const found = [byPath, byStem, byPart.length === 1 || !isStage ? byPart : [], byStage].find(
    (each) => each.length > 0,
  );
  if (found !== undefined && found.length > 1) {
    const names = found.map(({ session }) => session.name).join(', ');
    throw new UsageError(
      `${name} is part of the names of several sessions: ${names}`,
      'write more of the name',
    );
  }
  return found ?? [];
}
