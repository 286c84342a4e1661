import type { SessionDocument } from '../../documents/session/session.ts';
import { compare, type Fraction } from '../../quantity/fraction.ts';

/**
 * The sessions of an engine since it last ran, the earliest first, of all in the engine's order. Running wears every part:
 * what was measured before a teardown, or before a session with more hours, holds no longer.
 */
export function latestRun(sessions: readonly SessionDocument[]): readonly SessionDocument[] {
  let start = 0;
  let hours: Fraction | undefined;
  for (const [index, session] of sessions.entries()) {
    const read = session.hours?.amount;
    const hasRun = read !== undefined && hours !== undefined && compare(read, hours) > 0;
    if (session.stage === 'teardown' || hasRun) start = index;
    hours = read ?? hours;
  }
  return sessions.slice(start);
}
