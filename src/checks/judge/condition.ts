import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Condition, PartChange } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { isAt } from '../history/dependsOn.ts';

/** A session and the engine whose layout names its positions. */
export interface SessionOfEngine {
  readonly engine: Engine;
  readonly session: SessionDocument;
  readonly registry: Registry;
  /** Where the engine's state is judged: the earlier sessions of its run, the latest first. */
  readonly earlier?: readonly SessionDocument[];
}

/**
 * Which of the conditions that the session states chooses the band, and which one; without any its stage does. A fit with one part that is new or
 * machined is judged as new; else the condition of the part decides that the figure is of.
 */
export function statedCondition(
  around: SessionOfEngine,
  characteristic: Characteristic,
  position: Position,
): StatedCondition | undefined {
  const { of } = characteristic;
  const { session, earlier = [] } = around;
  // Most sessions say nothing of it.
  if ([session, ...earlier].every(({ partChanges }) => partChanges.length === 0)) return undefined;
  const stated = partsOfFit(characteristic, around.registry).flatMap((id) =>
    conditionsOf(id, position, around).map((each) => ({ ...each, isItsOwn: id === of })),
  );
  return stated.find(({ band }) => band === 'new') ?? stated.find(({ isItsOwn }) => isItsOwn);
}

export interface StatedCondition {
  readonly text: string;
  readonly band: 'new' | 'wear';
}

/** The part that it is of, and those that its figures are of from which it is worked out: a shell, its housing, its journal. */
const partsOfFit = ({ of, derivations }: Characteristic, registry: Registry): readonly string[] => [
  ...new Set(
    [of, ...derivations.flatMap(({ inputs }) => inputs.map((id) => registry.find(id)?.of))].flatMap(
      (id) => id ?? [],
    ),
  ),
];

const conditionsOf = (
  id: string,
  position: Position,
  { session, engine, registry, earlier = [] }: SessionOfEngine,
): readonly StatedCondition[] =>
  changesInForce(session, earlier).flatMap((change) => {
    const isHere = (part: PartAt): boolean => isAt(id, position, part, registry, engine.document.layout);
    if (!change.parts.some(isHere)) return [];
    const condition = change.conditionAt.find(isHere)?.condition ?? change.condition;
    return condition === undefined ? [] : [{ text: `${condition} ${change.name}`, band: bandOf(condition) }];
  });

/** What is said of a part last; what a session says of itself alone stands as it is. */
function changesInForce(
  session: SessionDocument,
  earlier: readonly SessionDocument[],
): readonly PartChange[] {
  const changes = [...session.partChanges];
  for (const change of earlier.flatMap(({ partChanges }) => partChanges)) {
    if (!changes.some(({ name }) => name === change.name)) changes.push(change);
  }
  return changes;
}

const bandOf = (condition: Condition): 'new' | 'wear' => (condition === 'used' ? 'wear' : 'new');
