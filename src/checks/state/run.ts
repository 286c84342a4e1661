import type { SessionDocument } from '../../documents/session/session.ts';
import { compare, type Fraction } from '../../quantity/fraction.ts';

/**
 * The sessions of an engine from one run to the next, the earliest first, in the engine's order. Running wears every part:
 * what was measured before a teardown, or before a session with more hours, holds no longer.
 */
export function runsOf(sessions: readonly SessionDocument[]): readonly (readonly SessionDocument[])[] {
  const runs: SessionDocument[][] = [];
  let hours: Fraction | undefined;
  for (const session of sessions) {
    const read = session.hours?.amount;
    const hasRun = read !== undefined && hours !== undefined && compare(read, hours) > 0;
    const run = runs.at(-1);
    if (run === undefined || session.stage === 'teardown' || hasRun) runs.push([session]);
    else run.push(session);
    hours = read ?? hours;
  }
  return runs;
}

/** Those since it last ran. */
export const latestRun = (sessions: readonly SessionDocument[]): readonly SessionDocument[] =>
  runsOf(sessions).at(-1) ?? [];
