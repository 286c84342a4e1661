import type { Characteristic } from '../../characteristics/characteristic.ts';
import { isAt } from '../../checks/history/dependsOn.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
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
  const { registry, state } = context;
  const part = registry.parts.find(fit.of ?? '');
  const row = state.rows.find((each) => each.characteristic === fit && each.position === position);
  if (part === undefined || row?.judgement.verdict !== 'ok') return undefined;
  return foundAt(context, part, position, ['renew', undefined]).length > 0
    ? undefined
    : fittedAt(context, part, position);
}

/** What went in at a place last since the engine ran, whatever was read there. */
export function fittedAt(
  { engine, registry, state }: PlanContext,
  part: Part,
  position: Position,
): InPlace | undefined {
  const isHere = (at: PartAt): boolean => isAt(part.id, position, at, registry, engine.document.layout);
  const fitted = state.run.flatMap((session) =>
    session.partChanges
      .filter(({ how, parts }) => (how === 'fitted' || how === 'replaced') && parts.some(isHere))
      .map(({ mark, marksAt }) => ({
        position,
        fittedIn: session,
        mark: marksAt.find(({ parts }) => parts.some(isHere))?.mark ?? mark,
      })),
  );
  return fitted.at(-1);
}
