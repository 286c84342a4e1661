import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { applyConcessions } from '../judge/applyConcessions.ts';
import { concessionsFor } from '../judge/concessionInForce.ts';
import type { JudgingOptions, Row, SessionView } from '../judge/row.ts';
import { rowsOf } from '../judge/rows.ts';
import { type EngineRoutes, routesOf } from './routes.ts';

/** A session and what was measured in it, judged. */
export interface MeasuredSession {
  readonly session: SessionDocument;
  readonly rows: readonly Row[];
}

export const viewOf = (
  engine: Engine,
  registry: Registry,
  session: SessionDocument,
  options: JudgingOptions = {},
  built?: EngineRoutes,
): SessionView => ({
  engine,
  registry,
  session,
  options,
  routes: routesOf(engine, registry, session, built),
  concessions: concessionsFor(engine, session),
});

/** Measures and judges what a session has, and says nothing about it. */
export const measuredRows = (view: SessionView): readonly Row[] =>
  view.registry.all
    .filter((each) => view.routes.mayHave(each))
    .flatMap((each) => rowsOf(each, view))
    .map((row) => applyConcessions(row, view.concessions));

export const measuredSession = (
  engine: Engine,
  registry: Registry,
  session: SessionDocument,
): MeasuredSession => ({ session, rows: measuredRows(viewOf(engine, registry, session)) });
