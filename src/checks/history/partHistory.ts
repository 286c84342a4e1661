import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { PartChange } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { isWorkOn } from '../value/work.ts';
import { dependsOn } from './dependsOn.ts';
import { sessionsBefore } from './earlier.ts';

/**
 * Why what a session measures here does not go on from what was measured before; undefined where it does.
 * A fitted part is another one where its mark, code or size is not what an earlier session said, or where none said
 * anything of it and it is new or reground.
 */
export function partHistoryStart(
  session: SessionDocument,
  earlier: readonly SessionDocument[],
  characteristic: Characteristic,
  position: Position,
  registry: Registry,
  layout: Layout,
): string | undefined {
  const changed = session.partChanges.find(
    (change) =>
      change.parts.some((part) => dependsOn(characteristic, position, part, registry, layout)) &&
      (change.how !== 'fitted' || isAnother(change, earlier)),
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

function isAnother(change: PartChange, earlier: readonly SessionDocument[]): boolean {
  const before = earlier.flatMap(({ partChanges }) => partChanges);
  const stated = before.findLast((each) => each.how === 'fitted' && each.name === change.name);
  if (stated === undefined) return change.isFresh;
  const isSameMark = change.mark !== undefined && change.mark === stated.mark;
  return isSameMark ? isMadeAnew(change, stated, before) : !isSaidAlike(change, stated);
}

const isSaidAlike = ({ identity: a }: PartChange, { identity: b }: PartChange): boolean =>
  a.size === b.size && [...a].every(([key, text]) => b.get(key) === text);

/** A size that is said of one mark for the first time is news, unless some session told how it was made. */
function isMadeAnew(change: PartChange, stated: PartChange, before: readonly PartChange[]): boolean {
  const wasMachined = before.some(({ how, sizes }) => how === 'machined' && sizes.length > 0);
  return [...change.identity].some(([key, text]) => {
    const was = stated.identity.get(key);
    return was === undefined ? text !== 'std' && !wasMachined : was !== text;
  });
}
