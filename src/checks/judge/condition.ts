import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { BandName } from '../../documents/limits/bands.ts';
import type { Condition, PartChange } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import { findPosition } from '../../layout/readKey.ts';
import { isOf } from '../history/partHistory.ts';
import { decidingOrder } from './verdict.ts';

/** A session and the engine whose layout names its positions. */
export interface SessionOfEngine {
  readonly engine: Engine;
  readonly session: SessionDocument;
}

/**
 * The bands in the order in which they decide: as the run asks for, else by the condition of the part that is measured,
 * as the session says it was fitted, else by the session's stage.
 */
export const bandOrder = (
  around: SessionOfEngine,
  characteristic: Characteristic,
  position: Position,
  judgeBy?: 'new' | 'wear' | undefined,
): readonly BandName[] =>
  decidingOrder(around.session.stage, judgeBy ?? statedCondition(around, characteristic, position)?.band);

/** Which of the conditions that the session states chooses the band, and which one; the parts it is measured of agree. */
export function statedCondition(
  { session, engine }: SessionOfEngine,
  characteristic: Characteristic,
  position: Position,
): { readonly text: string; readonly band: 'new' | 'wear' } | undefined {
  const isHere = (key: string): boolean =>
    findPosition(engine.document.layout, characteristic.family, key) === position;
  const stated = session.partChanges.flatMap((change) => {
    const condition = conditionAt(change, isHere);
    return condition !== undefined && isOf(change.part, characteristic.id) ? [{ change, condition }] : [];
  });
  const [first] = stated;
  const bands = new Set(stated.map(({ condition }) => bandOf(condition)));
  // Parts that disagree, such as new shells on a used shaft, leave it to the stage.
  if (first === undefined || bands.size > 1) return undefined;
  return { text: `${first.condition} ${first.change.part}`, band: bandOf(first.condition) };
}

const conditionAt = (
  { condition, conditionAt: at }: PartChange,
  isHere: (key: string) => boolean,
): Condition | undefined => [...at].find(([key]) => isHere(key))?.[1] ?? condition;

const bandOf = (condition: Condition): 'new' | 'wear' => (condition === 'used' ? 'wear' : 'new');
