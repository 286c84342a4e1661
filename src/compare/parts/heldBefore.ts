import type { Row } from '../../checks/judge/row.ts';
import { measuredSession } from '../../checks/value/measured.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type Correction, type PastCommit, type PastState, withPast } from '../past.ts';
import type { Judgeable } from '../state.ts';
import type { DatedStay } from './markedParts.ts';
import { characteristicsOf, type MeasuredPart } from './measuredPart.ts';

/** What earlier commits held of a part while it was in one engine, and no document says any more. */
export interface HeldBefore {
  readonly stay: DatedStay;
  readonly removed: readonly RemovedSession[];
  readonly corrected: readonly Correction[];
}

/** A session that is gone, with what it measured of the part. */
export interface RemovedSession {
  readonly session: SessionDocument;
  readonly rows: readonly Row[];
  readonly held: PastCommit;
}

export const heldBefore = (
  part: MeasuredPart,
  statesOf: (engine: Judgeable) => readonly PastState[],
): readonly HeldBefore[] =>
  part.stays
    .map((stay) => heldInStay(stay, part, statesOf(stay.of)))
    .filter(({ removed, corrected }) => removed.length + corrected.length > 0);

function heldInStay(stay: DatedStay, part: MeasuredPart, states: readonly PastState[]): HeldBefore {
  const { engine, registry } = stay.of;
  const present = engine.sessions.map((each) => measuredSession(engine, registry, each));
  const removed = new Map<SessionDocument, RemovedSession>();
  const corrected: Correction[] = [];
  for (const { id } of characteristicsOf(part)) {
    const { sessions, past } = withPast(present, states, id);
    corrected.push(...past.corrected.filter(({ session }) => wasThere(session, stay)));
    for (const [session, held] of past.removed) {
      const own = sessions.find((each) => each.session === session)?.rows ?? [];
      const rows = own.filter(({ characteristic, routes }) => characteristic.id === id && routes.length > 0);
      if (!wasThere(session, stay) || rows.length === 0) continue;
      removed.set(session, { session, held, rows: [...(removed.get(session)?.rows ?? []), ...rows] });
    }
  }
  return { stay, removed: [...removed.values()], corrected };
}

const wasThere = ({ date }: SessionDocument, { from, to }: DatedStay): boolean =>
  date >= from && (to === undefined || date < to);
