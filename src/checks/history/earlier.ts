import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';

/**
 * The sessions before this one, in the engine's order: of one date the order of their paths decides. An entry that is
 * still being taken is none of the engine's sessions yet, and comes after those of earlier dates.
 */
export function sessionsBefore({ sessions }: Engine, session: SessionDocument): readonly SessionDocument[] {
  const index = sessions.indexOf(session);
  return index < 0 ? sessions.filter(({ date }) => date < session.date) : sessions.slice(0, index);
}
