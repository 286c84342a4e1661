import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Registry } from '../characteristics/registry.ts';
import type { Engine } from '../documents/assemble.ts';
import type { SessionDocument } from '../documents/session/session.ts';
import { withConcessions } from './conceded.ts';
import { concessionsFor } from './concessionInForce.ts';
import { SessionRoutes } from './routes.ts';
import { type JudgingOptions, positionsIn, type Row, rowsOf, type SessionView } from './row.ts';

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
): SessionView => ({
  engine,
  registry,
  session,
  options,
  routes: new SessionRoutes(engine, registry, session),
});

/** Whether what a session has of a characteristic is asked for, by the positions that it may have. */
export type IsAsked = (characteristic: Characteristic, positions: readonly string[]) => boolean;

const everything: IsAsked = () => true;

/** Measures and judges one session, and says nothing about it. */
export function measuredRows(view: SessionView, isAsked: IsAsked = everything): readonly Row[] {
  const concessions = concessionsFor(view.engine, view.session);
  return view.registry.all
    .filter((each) => view.routes.mayHave(each) && isAsked(each, positionsIn(each, view)))
    .flatMap((each) => rowsOf(each, view))
    .map((row) => withConcessions(row, concessions));
}

export const measuredSession = (
  engine: Engine,
  registry: Registry,
  session: SessionDocument,
): MeasuredSession => ({ session, rows: measuredRows(viewOf(engine, registry, session)) });
