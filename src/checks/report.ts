import type { Registry } from '../characteristics/registry.ts';
import type { Engine } from '../documents/assemble.ts';
import type { DecisionRule } from '../documents/shop.ts';
import type { Unit } from '../quantity/units.ts';
import type { JudgingOptions, Row } from './row.ts';
import { type JudgedSession, judgeSession, unitOfRow } from './session.ts';

/** An engine with its judged sessions, in the order of their dates. */
export interface EngineReport {
  readonly engine: Engine;
  readonly rule: DecisionRule;
  readonly sessions: readonly ReportedSession[];
}

export interface ReportedSession extends JudgedSession {
  /** The row of the latest earlier session that has a value of the same thing there. */
  readonly before: (row: Row) => EarlierRow | undefined;
}

export interface EarlierRow {
  readonly row: Row;
  readonly date: string;
}

export function reportEngine(engine: Engine, registry: Registry, options: JudgingOptions): EngineReport {
  const earlier = new Map<string, EarlierRow>();
  const sessions = engine.sessions.map((session) => {
    const judged = judgeSession(engine, registry, session, options);
    const before = new Map(earlier);
    for (const row of judged.rows) {
      if (row.routes.length > 0) earlier.set(keyOf(row), { row, date: session.date });
    }
    return { ...judged, before: (row: Row) => before.get(keyOf(row)) };
  });
  return { engine, rule: options.rule ?? engine.rule, sessions };
}

const keyOf = ({ characteristic, position }: Row): string => `${characteristic.id} ${position}`;

export const unitsFor =
  (engine: Engine) =>
  (row: Row): Unit =>
    unitOfRow(row, engine);
