import type { JudgedRoute, Row } from '../checks/judge/row.ts';
import type { MeasuredSession } from '../checks/value/measured.ts';
import { compareSessions, type SessionDocument } from '../documents/session/session.ts';
import { equals, toNumber } from '../quantity/fraction.ts';

/** A commit that held what the documents of today do not. */
export interface PastCommit {
  readonly commit: string;
  /** The day it was committed, YYYY-MM-DD in UTC. */
  readonly date: string;
}

/** What a commit held. */
export interface PastState {
  readonly held: PastCommit;
  /** The paths of its sessions. */
  readonly paths: ReadonlySet<string>;
  /** Those whose files are none that a later state has. */
  readonly sessions: readonly MeasuredSession[];
}

/** A value that an earlier commit held, of a session that says something else since. */
export interface Correction {
  readonly session: SessionDocument;
  /** As it was then. */
  readonly row: Row;
  readonly was: JudgedRoute;
  /** Undefined where the session has no such reading any more. */
  readonly is: JudgedRoute | undefined;
  readonly held: PastCommit;
}

/** What earlier commits add to the sessions of an engine. */
export interface EarlierStates {
  /** Sessions that do not stand any more, as the latest commit held them. */
  readonly removed: ReadonlyMap<SessionDocument, PastCommit>;
  readonly corrected: readonly Correction[];
}

export const NO_PAST: EarlierStates = { removed: new Map(), corrected: [] };

/** The sessions of an engine together with those that were removed; each counts once, as it was stated last. */
export function withPast(
  present: readonly MeasuredSession[],
  states: readonly PastState[],
  measure: string,
): { readonly sessions: readonly MeasuredSession[]; readonly past: EarlierStates } {
  const known = [...present];
  const removed = new Map<SessionDocument, PastCommit>();
  const corrected = new Map<string, Correction>();
  for (const { held, paths, sessions } of states) {
    for (const each of sessions) {
      const latest = sameSession(each, paths, known, measure);
      if (latest === undefined) {
        known.push(each);
        removed.set(each.session, held);
      } else {
        for (const found of corrections(each, latest, measure, held)) {
          const key = keyOf(found);
          if (!corrected.has(key)) corrected.set(key, found);
        }
      }
    }
  }
  return {
    sessions: known.sort((a, b) => compareSessions(a.session, b.session)),
    past: { removed, corrected: [...corrected.values()] },
  };
}

/**
 * What a session of an earlier commit is now. A file that says another day holds another session, written over it,
 * unless the readings stayed: then the day was put right. A session whose file was not there then may be one that was
 * given another name since.
 */
function sameSession(
  earlier: MeasuredSession,
  paths: ReadonlySet<string>,
  known: readonly MeasuredSession[],
  measure: string,
): MeasuredSession | undefined {
  const { path, date, stage } = earlier.session;
  const ofFile = known.filter(({ session }) => session.path === path);
  return (
    ofFile.find(({ session }) => session.date === date) ??
    ofFile.find((each) => haveSameValues(each, earlier, measure)) ??
    known.find(({ session }) => session.date === date && session.stage === stage && !paths.has(session.path))
  );
}

function haveSameValues(a: MeasuredSession, b: MeasuredSession, measure: string): boolean {
  const [first, second] = [a, b].map((each) => measured(each, measure).map(valueKey).sort());
  return first?.join() === second?.join();
}

function corrections(
  earlier: MeasuredSession,
  latest: MeasuredSession,
  measure: string,
  held: PastCommit,
): readonly Correction[] {
  return measured(earlier, measure).flatMap((row) => {
    const [was] = row.routes;
    const is = measured(latest, measure).find(({ position }) => position.key === row.position.key)?.routes[0];
    if (was === undefined || (is !== undefined && isSame(is, was))) return [];
    return [{ session: latest.session, row, was, is, held }];
  });
}

const measured = ({ rows }: MeasuredSession, measure: string): readonly Row[] =>
  rows.filter(({ characteristic, routes }) => characteristic.id === measure && routes.length > 0);

/** At 20 °C: limits that were put at another temperature since correct no reading. */
const isSame = ({ standard: a }: JudgedRoute, { standard: b }: JudgedRoute): boolean =>
  equals(a.least, b.least) && equals(a.greatest, b.greatest);

const keyOf = ({ session, row }: Correction): string => `${session.path} ${session.date} ${valueKey(row)}`;

/** Where, and what: values that were written alike have like keys. */
const valueKey = ({ position, routes: [judged] }: Row): string =>
  [position.key, judged?.standard.least, judged?.standard.greatest]
    .map((each) => (typeof each === 'object' ? toNumber(each) : each))
    .join(' ');
