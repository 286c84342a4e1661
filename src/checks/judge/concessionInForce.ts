import type { Engine } from '../../documents/assemble.ts';
import type { Concession } from '../../documents/session/concessions.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { sessionsBefore } from '../history/earlier.ts';
import type { Side } from './sideLimit.ts';

/** A concession as it bears on one session. */
export interface ConcessionInForce {
  readonly concession: Concession;
  /** From this very session, or from an earlier one. */
  readonly isOwn: boolean;
  /** Ended before the session's date. */
  readonly isOver: boolean;
  readonly from: SessionDocument;
}

/** What a concession says of one side on which a value is out. */
export interface ConcessionOfSide extends ConcessionInForce {
  readonly side: Side;
  /** It reaches as far as the value lies. */
  readonly isEnough: boolean;
}

/** A session's own concessions, and those of earlier sessions that say until when they hold: the latest first. */
export function concessionsFor(engine: Engine, session: SessionDocument): readonly ConcessionInForce[] {
  const earlier = sessionsBefore(engine, session).flatMap((from) =>
    from.concessions.flatMap((concession) => {
      const { until } = concession;
      return until === undefined ? [] : [{ concession, isOwn: false, isOver: until < session.date, from }];
    }),
  );
  const own = session.concessions.map((concession) => ({
    concession,
    isOwn: true,
    isOver: false,
    from: session,
  }));
  return [...own, ...earlier.reverse()];
}
