import type { Observation } from '../../documents/session/observations.ts';
import type { Position } from '../../layout/position.ts';
import { type Cut, type CutGroup, isBeyond } from './cut.ts';
import { urgencyOf } from './urgency.ts';

export const isPastSteps = ({ deciding }: CutGroup): boolean => isBeyond(deciding);

/** Of bores those that no step is left for, and those that are cut to one; each with what asks for it there. */
export function bySteps(cut: Cut): { readonly past: Cut | undefined; readonly left: Cut | undefined } {
  const past = cut.groups.filter(isPastSteps);
  if (past.length === 0) return { past: undefined, left: cut };
  const isPast = (position: Position): boolean =>
    past.some(({ places }) => places.some((place) => place.position === position));
  const rows = cut.rows.filter(({ position }) => !isPast(position));
  const found = cut.found.filter((each) => isSeen(each, (position) => !isPast(position)));
  const left: Cut = {
    ...cut,
    groups: cut.groups.filter((group) => !isPastSteps(group)),
    rows,
    found,
    urgency: found.length > 0 ? 'must' : urgencyOf(rows),
  };
  return {
    past: {
      ...cut,
      groups: past,
      rows: cut.rows.filter(({ position }) => isPast(position)),
      found: cut.found.filter((each) => isSeen(each, isPast)),
      unmeasured: [],
      doubted: [],
    },
    left: rows.length + found.length === 0 ? undefined : left,
  };
}

/** Whether anything was seen at such a position, or nobody says where. */
const isSeen = ({ parts }: Observation, isAsked: (position: Position) => boolean): boolean =>
  parts.some(({ positions }) => positions.length === 0 || positions.some(isAsked));
