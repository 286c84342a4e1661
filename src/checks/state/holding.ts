import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Stage } from '../../documents/session/stage.ts';
import { isSamePartAfter } from '../history/partHistory.ts';
import type { Holds } from '../value/routes.ts';
import { clampedAnew, jointPartsOf } from './clamping.ts';

/** Whether the parts of a characteristic at a position are, after a run's later sessions, what they were in one of it. */
export const samePartsSince =
  (engine: Engine, registry: Registry, run: readonly SessionDocument[]): Holds =>
  (characteristic, position, session) =>
    isSamePartAfter(run.slice(run.indexOf(session) + 1), characteristic, position, engine, registry);

/** Stages at which an engine lies in pieces, or goes together anew; a teardown begins a run of its own. */
const APART: readonly Stage[] = ['machined', 'trial', 'rebuild'];

/**
 * Whether what a session of a run read still holds after its later ones: a size until its part is worked on, machined,
 * replaced or fitted anew, and one that a joint clamps until that is tightened in another way; a figure of parts put
 * together also no longer than they stay so.
 */
export const holdsSince = (
  run: readonly SessionDocument[],
  isSamePart: Holds,
  of: { readonly engine: Engine; readonly registry: Registry },
): Holds => {
  const isOpened = ({ stage }: SessionDocument, later: SessionDocument): boolean =>
    later.stage !== stage && APART.includes(later.stage);
  const clamping = { ...of, jointParts: jointPartsOf(run, of) };
  return (characteristic, position, session) => {
    const after = run.slice(run.indexOf(session) + 1);
    if (characteristic.isAssemblyFigure === true && after.some((later) => isOpened(session, later)))
      return false;
    if (clampedAnew(characteristic, position, session, run, clamping) !== undefined) return false;
    return isSamePart(characteristic, position, session);
  };
};
