import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { isFreshWhere } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { TighteningLog } from '../../documents/tightening/tightened.ts';
import type { Position } from '../../layout/position.ts';
import { type PartAt, readPart } from '../../layout/readPart.ts';
import { compare, type Fraction, greatest } from '../../quantity/fraction.ts';
import { finalTorques } from '../../torque/sequence.ts';
import { dependsOn } from '../history/dependsOn.ts';

/** The parts that the words of each joint name, of those that the sessions of a run tightened: read once. */
export type JointParts = ReadonlyMap<TighteningLog, readonly PartAt[]>;

export const jointPartsOf = (
  run: readonly SessionDocument[],
  { engine, registry }: { readonly engine: Engine; readonly registry: Registry },
): JointParts =>
  new Map(
    run.flatMap(({ tightened }) =>
      tightened.map((log) => {
        const meaning = readPart(log.document.joint.sequence.joint, registry.parts, engine.document.layout);
        return [log, meaning.kind === 'parts' ? meaning.at : []] as const;
      }),
    ),
  );

interface Clamping {
  readonly engine: Engine;
  readonly registry: Registry;
  readonly jointParts: JointParts;
}

/**
 * Whether a joint that a size is clamped by was tightened in another way after it was read: with new fasteners, another
 * lubricant, or to another torque. A housing or a bore with shells is round for one way of tightening.
 */
export function isClampedAnew(
  characteristic: Characteristic,
  position: Position,
  read: SessionDocument,
  after: readonly SessionDocument[],
  { engine, registry, jointParts }: Clamping,
): boolean {
  const { layout } = engine.document;
  const isOfIt = (part: PartAt): boolean => dependsOn(characteristic, position, part, registry, layout);
  return after.some((later, index) =>
    later.tightened.some((log) => {
      if (!jointParts.get(log)?.some(isOfIt)) return false;
      const since = [read, ...after.slice(0, index)];
      return isNewSet(log, [...since, later], isOfIt) || isOtherwise(log, logsUpTo(read, engine, log));
    }),
  );
}

/** New fasteners, which no session since the reading says were put in before. */
const isNewSet = (
  { fasteners }: TighteningLog,
  since: readonly SessionDocument[],
  isOfIt: (part: PartAt) => boolean,
): boolean =>
  fasteners === 'new' &&
  !since.some(({ partChanges }) =>
    partChanges.some((each) => each.parts.some(isOfIt) && isFreshWhere(each, isOfIt)),
  );

/** The logs of the same joint up to the session of the reading, the latest first. */
const logsUpTo = (
  read: SessionDocument,
  { sessions }: Engine,
  { document }: TighteningLog,
): readonly TighteningLog[] =>
  sessions
    .slice(0, sessions.indexOf(read) + 1)
    .flatMap(({ tightened }) => tightened)
    .filter((each) => each.document.joint.sequence.joint === document.joint.sequence.joint)
    .reverse();

function isOtherwise(log: TighteningLog, before: readonly TighteningLog[]): boolean {
  const lubricant = before.find((each) => each.lubricant !== undefined)?.lubricant?.name;
  const isOtherLubricant =
    log.lubricant !== undefined && lubricant !== undefined && log.lubricant.name !== lubricant;
  const [was, is] = [before[0], log].map((each) => each && finalTorque(each));
  return isOtherLubricant || (was !== undefined && is !== undefined && compare(was, is) !== 0);
}

/** The greatest torque that the sequence comes to; undefined where it goes by angle or stretch alone. */
function finalTorque({ document }: TighteningLog): Fraction | undefined {
  const torques = [...finalTorques(document.joint.sequence).values()];
  return torques.length === 0 ? undefined : greatest(torques.map((each) => each.greatest));
}
