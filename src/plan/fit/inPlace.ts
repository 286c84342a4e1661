import type { Characteristic } from '../../characteristics/characteristic.ts';
import { isAt } from '../../checks/history/dependsOn.ts';
import type { PartChange } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import type { PlanContext } from '../work/context.ts';
import { foundAt } from '../work/damage.ts';

/** A place whose part is not chosen again: it was fitted since the engine last ran, and its fit is inside as it was read. */
export interface InPlace {
  readonly position: Position;
  readonly fittedIn: SessionDocument;
  /** What is stamped on it there, where that is stated. */
  readonly mark: string | undefined;
}

/** By what a fit was read to be, such as a clearance: a reading of parts that are no longer there counts no more. */
export function inPlaceAt(
  context: PlanContext,
  fit: Characteristic,
  position: Position,
): InPlace | undefined {
  const { engine, registry, state } = context;
  const part = registry.parts.find(fit.of ?? '');
  const row = state.rows.find((each) => each.characteristic === fit && each.position === position);
  if (part === undefined || row?.judgement.verdict !== 'ok') return undefined;
  if (foundAt(context, part, position, ['renew', undefined]).length > 0) return undefined;
  const isHere = (at: PartChange['parts'][number]): boolean =>
    isAt(part.id, position, at, registry, engine.document.layout);
  const changes = state.run.flatMap((session) =>
    session.partChanges
      .filter(({ how, parts }) => (how === 'fitted' || how === 'replaced') && parts.some(isHere))
      .map((change) => ({ session, change })),
  );
  const last = changes.at(-1);
  if (last === undefined) return undefined;
  const { mark, marksAt } = last.change;
  return {
    position,
    fittedIn: last.session,
    mark: marksAt.find(({ parts }) => parts.some(isHere))?.mark ?? mark,
  };
}
