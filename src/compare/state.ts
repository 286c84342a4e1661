import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Registry } from '../characteristics/registry.ts';
import { concessionsFor } from '../checks/judge/concessionInForce.ts';
import { positionsIn, type Row } from '../checks/judge/row.ts';
import { unitOfRow } from '../checks/judge/session.ts';
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
export const stateOfSession = (judgeable: Judgeable, session: SessionDocument): EngineState =>
  stateOf(judgeable, [session]);

/** The latest value of every characteristic at every position, over all sessions. */
export function stateOfEngine(judgeable: Judgeable): EngineState {
  const { folder, sessions } = judgeable.engine;
  const below = (path: string): string =>
    path.startsWith(`${folder}/`) ? path.slice(folder.length + 1) : path;
  return {
    ...stateOf(judgeable, sessions),
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

function stateOf({ engine, registry }: Judgeable, sessions: readonly SessionDocument[]): EngineState {
  const values = latestValues(engine, registry, sessions);
  return {
    values,
    sessions: new Map(),
    concessions: concessionsOf(engine, [...values.values()], sessions.at(-1)),
    instruments: engine.instruments,
    unitFor: (row) => unitOfRow(row, engine),
    layout: engine.document.layout,
  };
}

/** From the last session back; what later ones have of a characteristic at all its positions is not worked out again. */
function latestValues(
  engine: Engine,
  registry: Registry,
  sessions: readonly SessionDocument[],
): ReadonlyMap<string, StateValue> {
  const values = new Map<string, StateValue>();
  for (const session of sessions.toReversed()) {
    const view = viewOf(engine, registry, session);
    const isOpen = (characteristic: Characteristic): boolean =>
      positionsIn(characteristic, view).some((position) => !values.has(keyOf({ characteristic, position })));
    for (const row of measuredRows(view, isOpen)) {
      if (row.routes.length > 0 && !values.has(keyOf(row))) values.set(keyOf(row), { row, session });
    }
  }
  return values;
}

/** Those in force at the last session, and those that still bear on a value. */
function concessionsOf(
  engine: Engine,
  values: readonly StateValue[],
  last: SessionDocument | undefined,
): readonly ConcessionOf[] {
  const inForce = last === undefined ? [] : concessionsFor(engine, last).filter(({ isOver }) => !isOver);
  const bearing = values.flatMap(({ row }) => row.concessions).filter(({ isOver }) => !isOver);
  const byConcession = new Map([...inForce, ...bearing].map((each) => [each.concession, each.from]));
  return [...byConcession].map(([concession, session]) => ({ concession, session }));
}
