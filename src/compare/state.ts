import { concessionsFor } from '../checks/concessionInForce.ts';
import type { EngineReport, ReportedSession } from '../checks/report.ts';
import type { Row } from '../checks/row.ts';
import { unitOfRow } from '../checks/session.ts';
import type { Engine } from '../documents/assemble.ts';
import type { RegisteredInstrument } from '../documents/engine/instruments.ts';
import type { Layout } from '../documents/engine/layout.ts';
import type { Concession } from '../documents/session/concessions.ts';
import type { SessionDocument } from '../documents/session/session.ts';
import type { Unit } from '../quantity/units.ts';

/** What an engine measured at one side of a comparison. */
export interface EngineState {
  /** By characteristic and position. */
  readonly values: ReadonlyMap<string, StateValue>;
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

export const keyOf = ({ characteristic, position }: Pick<Row, 'characteristic' | 'position'>): string =>
  `${characteristic.id} ${position}`;

/** One session's rows. */
export const stateOfSession = (report: EngineReport, session: ReportedSession): EngineState =>
  stateOf(report, [session]);

/** The latest value of every characteristic at every position, over all sessions. */
export const stateOfEngine = (report: EngineReport): EngineState => stateOf(report, report.sessions);

/** Of an engine that is not there on one side. */
export const emptyState = (unitFor: EngineState['unitFor']): EngineState => ({
  values: new Map(),
  concessions: [],
  instruments: new Map(),
  unitFor,
  layout: undefined,
});

function stateOf({ engine }: EngineReport, sessions: readonly ReportedSession[]): EngineState {
  const values = new Map<string, StateValue>();
  for (const { rows, session } of sessions) {
    for (const row of rows) {
      if (row.routes.length > 0) values.set(keyOf(row), { row, session });
    }
  }
  return {
    values,
    concessions: concessionsOf(engine, [...values.values()], sessions.at(-1)?.session),
    instruments: engine.instruments,
    unitFor: (row) => unitOfRow(row, engine),
    layout: engine.document.layout,
  };
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
