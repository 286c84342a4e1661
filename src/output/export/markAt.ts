import { isAt } from '../../checks/history/dependsOn.ts';
import type { EngineReport } from '../../checks/judge/report.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';

/** What is stamped on the part that a figure is of, as the engine or a session up to this one says it was fitted there. */
export function markAt(
  measure: string,
  position: Position,
  session: SessionDocument,
  { engine, registry }: EngineReport,
): string | undefined {
  const part = registry.parts.find(registry.find(measure)?.of ?? '');
  if (part === undefined) return undefined;
  const until = engine.sessions.indexOf(session) + 1;
  return [engine.document.fitted, ...engine.sessions.slice(0, until).map(({ sizes }) => sizes)]
    .flat()
    .findLast(
      ({ at, identity }) =>
        identity !== undefined && isAt(part.id, position, at, registry, engine.document.layout),
    )?.identity;
}
