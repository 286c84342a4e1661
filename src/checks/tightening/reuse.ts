import type { SessionDocument } from '../../documents/session/session.ts';
import type { TighteningLog } from '../../documents/tightening/tightened.ts';
import type { Joint } from '../../torque/joint.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';

const REUSED: FindingKind = {
  code: 'torque/reused',
  severity: 'error',
  means:
    'Fasteners that must not be used twice were tightened again, and the log does not say that they were new.',
  matters: 'A bolt that was once tightened to yield may break at the torque that is right for a new one.',
  usually: 'Fit new ones; if they were new, write `fasteners: new` in the log.',
  example:
    'rod bolts: fasteners that must not be used twice were tightened in 2026-03-02-trial already, and the log does not say that these were new',
};
const REUSE_UNSTATED: FindingKind = {
  code: 'torque/reuse-unstated',
  severity: 'warning',
  means:
    'Fasteners that are tightened by an angle or a stretch were tightened again. The sequence does not say whether they may be used twice, and the log does not say that they were new.',
  matters:
    'Tightening by an angle or a stretch may take a bolt to yield. Many such bolts are for one use only; the maker says which.',
  usually:
    'Ask the maker, and write `reuse: true` or `reuse: false` below `fasteners` in the sequence; if they were new, write `fasteners: new` in the log.',
  example:
    'cylinder head: fasteners tightened by an angle were tightened in 2026-03-02-trial already, and the log does not say that these were new; the sequence does not say whether they may be used twice',
};

export const reuseKinds: readonly FindingKind[] = [REUSED, REUSE_UNSTATED];

/** Fasteners that were tightened in an earlier session, or that the log says were used again. */
export function reuseFindings(
  { document, fasteners, span }: TighteningLog,
  session: SessionDocument,
  earlier: SessionDocument | undefined,
): readonly Finding[] {
  const again = againBy(fasteners, earlier);
  const doubt = doubtOf(document.joint);
  if (again === undefined || doubt === undefined) return [];
  const { kind, which, end } = doubt;
  const message = `${document.joint.sequence.joint}: fasteners ${which} were ${again}${end}`;
  return [finding(kind, session.placeOf(span), message, { limitPlace: document.start })];
}

function againBy(
  fasteners: TighteningLog['fasteners'],
  earlier: SessionDocument | undefined,
): string | undefined {
  if (fasteners === 'reused') return 'used again';
  if (fasteners === 'new' || earlier === undefined) return undefined;
  return `tightened in ${earlier.name} already, and the log does not say that these were new`;
}

function doubtOf({ reuse, sequence }: Joint) {
  if (reuse === 'once') return { kind: REUSED, which: 'that must not be used twice', end: '' };
  const kinds = new Set(sequence.passes.map(({ action }) => action.kind));
  const by = kinds.has('turn') ? 'an angle' : kinds.has('stretch') ? 'a stretch' : undefined;
  if (reuse === 'allowed' || by === undefined) return undefined;
  const end = '; the sequence does not say whether they may be used twice';
  return { kind: REUSE_UNSTATED, which: `tightened by ${by}`, end };
}
