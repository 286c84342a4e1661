import { compare } from '../../quantity/fraction.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Node } from '../yaml/node.ts';
import type { Band, LimitValue } from './bands.ts';

export const WEAR_HELP = 'look at the sheet: the two may be exchanged';

/**
 * A wear limit tighter than the limits of new parts: two figures exchanged. At a rebuild, where the limits of new
 * parts decide, a part beyond its wear limit would pass.
 */
export function reportTighterWear(
  fresh: Band | undefined,
  wear: Band | undefined,
  node: Node | undefined,
  context: DocumentContext,
): void {
  if (node === undefined) return;
  for (const { worn, other } of tighterSides(fresh, wear)) {
    const message = `the wear limit ${worn.written} is tighter than the ${other.written} of new parts`;
    report(context, 'value', node.span, message, WEAR_HELP);
  }
}

interface TighterSide {
  readonly worn: LimitValue;
  readonly other: LimitValue;
}

export const tighterSides = (fresh: Band | undefined, wear: Band | undefined): readonly TighterSide[] => [
  ...tighter(wear?.max, fresh?.max, (order) => order < 0),
  ...tighter(wear?.min, fresh?.min, (order) => order > 0),
];

function tighter(
  worn: LimitValue | undefined,
  other: LimitValue | undefined,
  isTighter: (order: number) => boolean,
): readonly TighterSide[] {
  if (worn?.kind !== 'amount' || other?.kind !== 'amount') return [];
  return isTighter(compare(worn.amount, other.amount)) ? [{ worn, other }] : [];
}
