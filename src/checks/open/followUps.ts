import { withUnit } from '../../documents/amount.ts';
import { nameAt } from '../../documents/measure.ts';
import type { FollowUp } from '../../documents/session/concessions.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { compare } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { amountText, printingOf } from '../findings/readings.ts';
import type { Row } from '../judge/row.ts';
import type { JudgedSession } from '../judge/session.ts';

const OPEN: FindingKind = {
  code: 'follow-up/open',
  severity: 'remark',
  means:
    'A concession asked for something to be measured later, and no later session has measured it as asked. It is a warning where one has, and the value does not meet what was asked.',
  matters: 'The deviation was accepted on that condition.',
  usually:
    'Measure it at the next service, in a session of its own. Where the value does not meet it, put the part right, or agree on a new concession.',
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
  /** While it is open: what was measured last, and does not meet it. */
  readonly missedBy: { readonly row: Row; readonly date: string } | undefined;
}

/** Every follow-up of an engine's sessions, in the order of their dates. */
export const followUpsOf = (sessions: readonly JudgedSession[]): readonly FollowUpState[] =>
  sessions.flatMap(({ session }, index) =>
    session.concessions
      .flatMap(({ followUps }) => followUps)
      .map((followUp) => {
        const read = sessions.slice(index + 1).flatMap((each) => rowOf(each, followUp) ?? []);
        const met = read.find(({ row }) => isMetBy(row, followUp));
        const state = met === undefined ? 'open' : 'closed';
        const missedBy = met === undefined ? read.at(-1) : undefined;
        return { session, followUp, state, closedBy: met?.session, metBy: met?.row, missedBy } as const;
      }),
  );

function rowOf({ rows, session }: JudgedSession, { measure, position }: FollowUp) {
  const row = rows.find((each) => each.characteristic.id === measure.id && each.position === position);
  return row === undefined || row.routes.length === 0 ? undefined : { row, session, date: session.date };
}

function isMetBy({ routes: [judged] }: Row, { min, max }: FollowUp): boolean {
  if (judged === undefined) return false;
  const isAbove = min === undefined || compare(judged.least, min.amount) >= 0;
  return isAbove && (max === undefined || compare(judged.greatest, max.amount) <= 0);
}

/** Reported in the session that made the promise, where it is still open. */
export const openFollowUps = (
  states: readonly FollowUpState[],
  of: SessionDocument,
  unitFor: (row: Row) => Unit,
): readonly Finding[] =>
  states
    .filter(({ session, state }) => session === of && state === 'open')
    .map((each) => {
      const { followUp, missedBy } = each;
      const text = openFollowUpText(each, unitFor);
      return finding(OPEN, followUp.place, missedBy === undefined ? `to be measured: ${text}` : text, {
        measure: followUp.measure.id,
        position: followUp.position,
        severity: missedBy === undefined ? 'remark' : 'warning',
      });
    });

/** `compression pressure 3, at least 90 psi`; `…: not met, 82 psi on 2026-05-20` where it was measured in vain. */
export function openFollowUpText(
  { followUp, missedBy }: Pick<FollowUpState, 'followUp' | 'missedBy'>,
  unitFor: (row: Row) => Unit,
): string {
  const [judged] = missedBy?.row.routes ?? [];
  const text = followUpText(followUp);
  return missedBy === undefined || judged === undefined
    ? text
    : `${text}: not met, ${amountText(judged, printingOf(missedBy.row, unitFor))} on ${missedBy.date}`;
}

/** `compression pressure 3, at least 300 psi`. */
export function followUpText({ measure, position, min, max }: FollowUp): string {
  const wanted = [min && `at least ${withUnit(min)}`, max && `at most ${withUnit(max)}`].filter(Boolean);
  return [nameAt(measure, position), ...wanted].join(', ');
}
