import type { TighteningLog } from '../../documents/tightening/tightened.ts';

/** A tightening that a session logs, as `check` gives it. */
export const tightenedJson = ({ document, with: wrench, fasteners, passes }: TighteningLog) => ({
  sequence: document.name,
  path: document.path,
  joint: document.joint.sequence.joint,
  with: wrench?.name ?? null,
  fasteners: fasteners ?? null,
  passes: passes?.length ?? null,
});
