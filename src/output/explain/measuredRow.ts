import { isState, type ReportedSession, type StateReport } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import { leavesOf } from '../../checks/value/route.ts';
import type { SessionDocument } from '../../documents/session/session.ts';

/** A row, and the session that has it or the state that it stands in. */
export interface MeasuredRow {
  readonly row: Row;
  readonly of: ReportedSession | StateReport;
  /** It was measured once, and the engine stands by it no more. */
  readonly isOver: boolean;
}

/** `machined 2026-04-22 and rebuild 2026-05-02`: when a value was read, of several sessions the earliest first. */
export function takenText({ row, of, isOver }: MeasuredRow): string {
  const taken = isState(of) ? of.run.filter((session) => isReadIn(row, session)) : [];
  const sessions = taken.length === 0 ? [of.session] : taken;
  return `${sessions.map(sessionText).join(' and ')}${isOver ? ', holds no longer' : ''}`;
}

/** A nominal size is read in no session. */
const isReadIn = ({ routes: [judged] }: Row, session: SessionDocument): boolean =>
  judged !== undefined &&
  leavesOf(judged.route).some(({ block, readIn }) => block !== undefined && readIn === session);

export const sessionText = ({ stage, date }: Pick<SessionDocument, 'stage' | 'date'>): string =>
  `${stage} ${date}`;
