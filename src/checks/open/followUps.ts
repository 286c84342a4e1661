import { withUnit } from '../../documents/amount.ts';
import { nameAt } from '../../documents/measure.ts';
import type { FollowUp } from '../../documents/session/concessions.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { compare } from '../../quantity/fraction.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { Row } from '../judge/row.ts';
import type { JudgedSession } from '../judge/session.ts';

const OPEN: FindingKind = {
  code: 'follow-up/open',
  severity: 'remark',
  means:
    'A concession asked for something to be measured later, and no later session has measured it as asked.',
  matters: 'The deviation was accepted on that condition.',
  usually: 'Measure it at the next service, in a session of its own.',
  example: 'to be measured: ring end gap, cylinder 1 top ring, at most 0.030 in',
};

export const followUpKinds: readonly FindingKind[] = [OPEN];

/** A promise that came with a concession, and what became of it. */
export interface FollowUpState {
  readonly session: SessionDocument;
  readonly followUp: FollowUp;
  readonly state: 'open' | 'closed';
  /** The session that closed it, and what it measured. */
  readonly closedBy: SessionDocument | undefined;
  readonly metBy: Row | undefined;
}

/** Every follow-up of an engine's sessions, in the order of their dates. */
export const followUpsOf = (sessions: readonly JudgedSession[]): readonly FollowUpState[] =>
  sessions.flatMap(({ session }, index) =>
    session.concessions
      .flatMap(({ followUps }) => followUps)
      .map((followUp) => {
        const later = sessions.slice(index + 1).find((each) => rowThatMeets(each, followUp) !== undefined);
        const metBy = later && rowThatMeets(later, followUp);
        const state = later === undefined ? 'open' : 'closed';
        return { session, followUp, state, closedBy: later?.session, metBy } as const;
      }),
  );

function rowThatMeets({ rows }: JudgedSession, { measure, position, min, max }: FollowUp): Row | undefined {
  const row = rows.find((each) => each.characteristic.id === measure.id && each.position === position);
  const judged = row?.routes[0];
  if (judged === undefined) return undefined;
  const isAbove = min === undefined || compare(judged.least, min.amount) >= 0;
  return isAbove && (max === undefined || compare(judged.greatest, max.amount) <= 0) ? row : undefined;
}

/** Reported in the session that made the promise, where it is still open. */
export const openFollowUps = (states: readonly FollowUpState[], of: SessionDocument): readonly Finding[] =>
  states
    .filter(({ session, state }) => session === of && state === 'open')
    .map(({ followUp }) =>
      finding(OPEN, followUp.place, `to be measured: ${followUpText(followUp)}`, {
        measure: followUp.measure.id,
        position: followUp.position,
      }),
    );

/** `compression pressure 3, at least 300 psi`. */
export function followUpText({ measure, position, min, max }: FollowUp): string {
  const wanted = [min && `at least ${withUnit(min)}`, max && `at most ${withUnit(max)}`].filter(Boolean);
  return [nameAt(measure, position), ...wanted].join(', ');
}
