import type { Registry } from '../characteristics/registry.ts';
import type { Row } from '../checks/judge/row.ts';
import { unitOfRow } from '../checks/judge/session.ts';
import { latestRun } from '../checks/state/run.ts';
import { type StandingRows, standingRows } from '../checks/state/state.ts';
import { measuredRows, viewOf } from '../checks/value/measured.ts';
import type { Engine } from '../documents/assemble.ts';
import type { RegisteredInstrument } from '../documents/engine/instruments.ts';
import type { Measure } from '../documents/measure.ts';
import type { Concession } from '../documents/session/concessions.ts';
import type { SessionDocument } from '../documents/session/session.ts';
import type { Layout } from '../layout/layout.ts';
import type { Position } from '../layout/position.ts';
import type { Unit } from '../quantity/units.ts';

/** An engine, and the characteristics that serve it. */
export interface Judgeable {
  readonly engine: Engine;
  readonly registry: Registry;
}

/** What an engine measured at one side of a comparison. */
export interface EngineState {
  /** By characteristic and position. */
  readonly values: ReadonlyMap<string, StateValue>;
  /** All of the engine's, by their paths below its folder; none where one session is compared. */
  readonly sessions: ReadonlyMap<string, SessionDocument>;
  readonly concessions: readonly ConcessionOf[];
  readonly instruments: ReadonlyMap<string, RegisteredInstrument>;
  readonly unitFor: (row: Row) => Unit;
  /** Undefined where there is no engine. */
  readonly layout: Layout | undefined;
}

export interface StateValue {
  readonly row: Row;
  readonly session: SessionDocument;
}

export interface ConcessionOf {
  readonly concession: Concession;
  readonly session: SessionDocument;
}

export const keyOfPosition = ({ id }: Pick<Measure, 'id'>, position: Position): string =>
  `${id} ${position.key}`;

export const keyOf = ({ characteristic, position, half }: Placed): string =>
  [keyOfPosition(characteristic, position), ...(half === undefined ? [] : [half])].join(' ');

type Placed = Pick<Row, 'characteristic' | 'position'> & Partial<Pick<Row, 'half'>>;

/** One session's values. */
export function stateOfSession(judgeable: Judgeable, session: SessionDocument): EngineState {
  const { engine, registry } = judgeable;
  const view = viewOf(engine, registry, session);
  return stateOf(judgeable, { view, rows: measuredRows(view) });
}

/** Where the engine stood after a session, as `tenths check` would have judged it then. */
export function stateAfter({ engine, registry }: Judgeable, session: SessionDocument): EngineState {
  const sessions = engine.sessions.slice(0, engine.sessions.indexOf(session) + 1);
  const then = { engine: { ...engine, sessions }, registry };
  return stateOf(then, standingRows(then.engine, registry, latestRun(sessions)));
}

/** Where the engine stands after all of its sessions, as `tenths check` judges it. */
export function stateOfEngine(judgeable: Judgeable): EngineState {
  const { folder, sessions } = judgeable.engine;
  const below = (path: string): string =>
    path.startsWith(`${folder}/`) ? path.slice(folder.length + 1) : path;
  const standing = standingRows(judgeable.engine, judgeable.registry, latestRun(sessions));
  return {
    ...stateOf(judgeable, standing),
    sessions: new Map(sessions.map((session) => [below(session.path), session])),
  };
}

/** Of an engine that is not there on one side. */
export const emptyState = (unitFor: EngineState['unitFor']): EngineState => ({
  values: new Map(),
  sessions: new Map(),
  concessions: [],
  instruments: new Map(),
  unitFor,
  layout: undefined,
});

function stateOf({ engine }: Judgeable, standing: StandingRows | undefined): EngineState {
  const rows = standing?.rows ?? [];
  return {
    values: new Map(rows.flatMap((row) => standingValue(row).map((value) => [keyOf(row), value] as const))),
    sessions: new Map(),
    concessions: (standing?.view.concessions ?? [])
      .filter(({ isOver }) => !isOver)
      .map(({ concession, from }) => ({ concession, session: from })),
    instruments: engine.instruments,
    unitFor: (row) => unitOfRow(row, engine),
    layout: engine.document.layout,
  };
}

/** None where nothing was measured. */
function standingValue(row: Row): readonly StateValue[] {
  const [judged] = row.routes;
  return judged === undefined ? [] : [{ row, session: judged.route.readIn }];
}
