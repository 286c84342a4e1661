import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { TighteningView } from './view.ts';

/** `main caps, pass 2`. */
export const passName = ({ log }: TighteningView, pass: number): string =>
  `${log.document.joint.sequence.joint}, pass ${pass}`;

/** A finding about a pass, with the place where the sequence has it. */
export const aboutPass = (
  kind: FindingKind,
  place: Finding['place'],
  message: string,
  { log }: TighteningView,
  pass: number,
  fastener: string | undefined,
): Finding =>
  finding(kind, place, message, {
    limitPlace: log.document.passPlaces[pass - 1],
    ...(fastener === undefined ? {} : { fastener }),
  });
