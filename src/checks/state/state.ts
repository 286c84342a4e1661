import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { concessionsFor } from '../judge/concessionInForce.ts';
import type { JudgingOptions, Row, SessionView } from '../judge/row.ts';
import type { JudgedSession } from '../judge/session.ts';
import { measuredRows, viewOf } from '../value/measured.ts';
import { type EngineRoutes, SessionRoutes } from '../value/routes.ts';
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
  built: EngineRoutes = new Map(),
): JudgedSession | undefined {
  const last = run.at(-1);
  const documents = run.map(({ session }) => session);
  if (last === undefined || isOfOneSession(engine, documents, last.session)) return last;
  const view = viewAfter(documents, last.session, { engine, registry, options, built });
  const rows = measuredRows(view);
  const findings = stateFindings(view, rows, run);
  return { session: last.session, rows, findings, taken: findings, steppedBack: [] };
}

export interface StandingRows {
  readonly view: SessionView;
  readonly rows: readonly Row[];
}

/** The values of a state and their verdicts alone, with nothing said of them. */
export function standingRows(
  engine: Engine,
  registry: Registry,
  run: readonly SessionDocument[],
  options: JudgingOptions = {},
  built: EngineRoutes = new Map(),
): StandingRows | undefined {
  const last = run.at(-1);
  if (last === undefined) return undefined;
  const view = isOfOneSession(engine, run, last)
    ? viewOf(engine, registry, last, options, built)
    : viewAfter(run, last, { engine, registry, options, built });
  return { view, rows: measuredRows(view) };
}

/** It stands where that session found it, by its own concessions alone. */
function isOfOneSession(engine: Engine, run: readonly SessionDocument[], last: SessionDocument): boolean {
  if (run.length > 1 || last.uses.length > 0) return false;
  const conceding = [...concessionsFor(engine, last).map(({ from }) => from), ...buildOf(engine, last)];
  return conceding.every((each) => each === last || each.concessions.length === 0);
}

/** Since the last teardown: what was conceded holds until the next one, though the engine has run. */
function buildOf({ sessions }: Engine, last: SessionDocument): readonly SessionDocument[] {
  const all = sessions.slice(0, sessions.indexOf(last) + 1);
  return all.slice(
    Math.max(
      0,
      all.findLastIndex(({ stage }) => stage === 'teardown'),
    ),
  );
}

interface Judging extends Pick<SessionView, 'engine' | 'registry' | 'options'> {
  readonly built: EngineRoutes;
}

/** The last session of a run, with what holds of the earlier ones. */
function viewAfter(
  run: readonly SessionDocument[],
  session: SessionDocument,
  { engine, registry, options, built }: Judging,
): SessionView {
  const earlier = run.slice(0, -1).reverse();
  const build = buildOf(engine, session);
  const isSamePart = samePartsSince(engine, registry, run);
  const holds = holdsSince(run, isSamePart, { engine, registry });
  return {
    engine,
    registry,
    session,
    earlier,
    holds,
    options,
    routes: new SessionRoutes(engine, registry, session, built, { earlier, holds }),
    concessions: concessionsOfRun(build, session, registry, samePartsSince(engine, registry, build)),
  };
}
