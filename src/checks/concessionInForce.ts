import type { Concession } from '../documents/concessions.ts';
import type { SessionDocument } from '../documents/session.ts';

/** A concession as it bears on one session. */
export interface ConcessionInForce {
  readonly concession: Concession;
  /** From this very session, or from an earlier one. */
  readonly isOwn: boolean;
  /** Ended before the session's date. */
  readonly isOver: boolean;
  readonly from: SessionDocument;
}
