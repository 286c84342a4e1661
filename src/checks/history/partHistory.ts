import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { conditionWhere, type PartChange } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { isWorkOn } from '../value/work.ts';
import { isAnotherPart, isFittedAlike } from './anotherPart.ts';
import { dependsOn } from './dependsOn.ts';
import { sessionsBefore } from './earlier.ts';

/**
 * Why what a session measures here does not go on from what was measured before; undefined where it does.
 * A fitted part is another one where its mark, code or size is not what an earlier session said, or where it is new or
 * reground and was not so before.
 */
export function partHistoryStart(
  session: SessionDocument,
  earlier: readonly SessionDocument[],
  characteristic: Characteristic,
  position: Position,
  registry: Registry,
  layout: Layout,
): string | undefined {
  const isHere = (part: PartAt): boolean => dependsOn(characteristic, position, part, registry, layout);
  const changed = session.partChanges.find(
    (change) =>
      change.parts.some(isHere) &&
      (change.how !== 'fitted' || isAnother(change, earlier, { isHere, parts: registry.parts })),
  );
  if (changed !== undefined) return [changed.name, changed.mark, changed.how].filter(Boolean).join(' ');
  const work = session.work.find((each) => isWorkOn(each, characteristic, position, registry, layout));
  return work === undefined ? undefined : `${work.on.name} ${work.work}`;
}

/** Whether the parts of a characteristic at a position came through these sessions of an engine unchanged. */
export const isSamePartAfter = (
  sessions: readonly SessionDocument[],
  characteristic: Characteristic,
  position: Position,
  engine: Engine,
  registry: Registry,
): boolean =>
  sessions.every((each) => {
    const earlier = sessionsBefore(engine, each);
    const { layout } = engine.document;
    return partHistoryStart(each, earlier, characteristic, position, registry, layout) === undefined;
  });

interface Here {
  readonly isHere: (part: PartAt) => boolean;
  readonly parts: Registry['parts'];
}

function isAnother(change: PartChange, earlier: readonly SessionDocument[], here: Here): boolean {
  const before = earlier.flatMap(({ partChanges }) => partChanges);
  return (
    isAnotherPart(change, before, here.parts) || becomesFresh(change, earlier.flatMap(machinedLast), here)
  );
}

/** What a session says to be fitted and machined was machined as it is fitted. */
const machinedLast = ({ partChanges }: SessionDocument): readonly PartChange[] => {
  const isMachined = ({ how }: PartChange): boolean => how === 'machined';
  return [...partChanges.filter((each) => !isMachined(each)), ...partChanges.filter(isMachined)];
};

/** New or reground, which was not said last. A part that was machined or renewed before is what it became then. */
function becomesFresh(change: PartChange, before: readonly PartChange[], { isHere, parts }: Here): boolean {
  const condition = conditionWhere(change, isHere);
  if (condition === undefined || condition === 'used') return false;
  const isOfIt = ({ part }: PartAt): boolean =>
    change.parts.some(
      (each) => parts.within(part).includes(each.part) || parts.within(each.part).includes(part),
    );
  const last = before.findLast((each) =>
    each.how === 'fitted'
      ? isFittedAlike(each, change) && conditionWhere(each, isHere) !== undefined
      : each.parts.some((part) => isOfIt(part) && isHere(part)),
  );
  if (last === undefined) return !before.some((each) => isFittedAlike(each, change));
  return last.how === 'fitted' && conditionWhere(last, isHere) !== condition;
}
