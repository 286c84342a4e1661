import type { Place } from '../../diagnostic/place.ts';
import { childOf, itemsOf, textAt } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** A warning that stays, since what it is about cannot or need not be done again: somebody says why. */
export interface AcceptedWarning {
  /** Its code. */
  readonly warning: string;
  /** What it is about, in the words it begins with: a joint, an instrument, a characteristic at a position. */
  readonly of: string;
  readonly reason: string;
  readonly by: string;
  readonly place: Place;
}

export const readAcceptedWarnings = (
  root: Node,
  placeOf: (span: Node['span']) => Place,
): readonly AcceptedWarning[] =>
  itemsOf(childOf(root, 'accepted')).map((item) => ({
    warning: textAt(item, 'warning') ?? '',
    of: textAt(item, 'of') ?? '',
    reason: textAt(item, 'reason') ?? '',
    by: textAt(item, 'by') ?? '',
    place: placeOf(item.span),
  }));
