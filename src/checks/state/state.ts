import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { JudgingOptions, SessionView } from '../judge/row.ts';
import type { JudgedSession } from '../judge/session.ts';
import { measuredRows } from '../value/measured.ts';
import { SessionRoutes } from '../value/routes.ts';
import { concessionsOfRun } from './concessionsOfRun.ts';
import { holdsSince, samePartsSince } from './holding.ts';
import { stateFindings } from './stateFindings.ts';

/**
 * Where an engine stands after the sessions of its run: of each characteristic at each position the latest value that
 * still holds, judged; and what there is to say of these. Undefined of a run without sessions.
 */
export function judgeState(
  engine: Engine,
  registry: Registry,
  run: readonly JudgedSession[],
  options: JudgingOptions = {},
): JudgedSession | undefined {
  const last = run.at(-1);
  // A run of one session stands where that session found it.
  if (last === undefined || (run.length === 1 && last.session.uses.length === 0)) return last;
  const earlier = run.slice(0, -1).map(({ session }) => session);
  const view = viewAfter(earlier, last.session, engine, registry, options);
  const rows = measuredRows(view);
  return { ...last, rows, findings: stateFindings(view, rows, run), steppedBack: [] };
}

/** The last session of a run, with what holds of the earlier ones. */
function viewAfter(
  before: readonly SessionDocument[],
  session: SessionDocument,
  engine: Engine,
  registry: Registry,
  options: JudgingOptions,
): SessionView {
  const run = [...before, session];
  const earlier = before.toReversed();
  const isSamePart = samePartsSince(engine, registry, run);
  const holds = holdsSince(run, isSamePart);
  return {
    engine,
    registry,
    session,
    earlier,
    options,
    routes: new SessionRoutes(engine, registry, session, new Map(), { earlier, holds }),
    concessions: concessionsOfRun(run, registry, isSamePart),
  };
}
