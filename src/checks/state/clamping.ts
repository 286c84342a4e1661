import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { isFreshWhere } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { TighteningLog } from '../../documents/tightening/tightened.ts';
import type { Position } from '../../layout/position.ts';
import { type PartAt, readPart } from '../../layout/readPart.ts';
import { compare, type Fraction, greatest } from '../../quantity/fraction.ts';
import { isSameLubricant } from '../../torque/fasteners/lubrication.ts';
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

/** A joint that was tightened in another way than before, and what is other about it. */
export interface ClampedAnew {
  readonly log: TighteningLog;
  readonly session: SessionDocument;
  readonly other: 'fasteners' | 'lubricant' | 'torque';
}

/**
 * How a joint that a size is clamped by was tightened in another way after it was read: with new fasteners, another
 * lubricant, or to another torque. A housing or a bore with shells is round for one way of tightening.
 */
export function clampedAnew(
  characteristic: Characteristic,
  position: Position,
  read: SessionDocument,
  run: readonly SessionDocument[],
  { engine, registry, jointParts }: Clamping,
): ClampedAnew | undefined {
  // No size of a head is clamped: its bolts end none.
  if (!characteristic.dependsOn.some((id) => registry.parts.find(id)?.isFastener)) return undefined;
  const { layout } = engine.document;
  const isOfIt = (part: PartAt): boolean => dependsOn(characteristic, position, part, registry, layout);
  const first = run.indexOf(read) + 1;
  for (const [index, session] of run.slice(first).entries()) {
    const upToIt = run.slice(0, first + index + 1);
    for (const log of session.tightened) {
      if (!jointParts.get(log)?.some(isOfIt)) continue;
      const other = isNewSet(log, upToIt, isOfIt) ? 'fasteners' : otherThan(log, logsUpTo(read, engine, log));
      if (other !== undefined) return { log, session, other };
    }
  }
  return undefined;
}

/** New fasteners of which no session of the run says when they were put in; one that does ends what was read before it by itself. */
const isNewSet = (
  { fasteners }: TighteningLog,
  upToIt: readonly SessionDocument[],
  isOfIt: (part: PartAt) => boolean,
): boolean =>
  fasteners === 'new' &&
  !upToIt.some(({ partChanges }) =>
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

function otherThan(log: TighteningLog, before: readonly TighteningLog[]): 'lubricant' | 'torque' | undefined {
  const lubricant = before.find((each) => each.lubricant !== undefined)?.lubricant?.name;
  if (
    log.lubricant !== undefined &&
    lubricant !== undefined &&
    !isSameLubricant(log.lubricant.name, lubricant)
  )
    return 'lubricant';
  const [was, is] = [before[0], log].map((each) => each && finalTorque(each));
  return was !== undefined && is !== undefined && compare(was, is) !== 0 ? 'torque' : undefined;
}

/** The greatest torque that the sequence comes to; undefined where it goes by angle or stretch alone. */
function finalTorque({ document }: TighteningLog): Fraction | undefined {
  const torques = [...finalTorques(document.joint.sequence).values()];
  return torques.length === 0 ? undefined : greatest(torques.map((each) => each.greatest));
}
