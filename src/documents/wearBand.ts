import { compare } from '../quantity/fraction.ts';
import { type DocumentContext, report } from './amount.ts';
import type { Band, LimitValue } from './bands.ts';
import type { Node } from './node.ts';

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
  const tell = (worn: LimitValue | undefined, other: LimitValue | undefined, sign: 1 | -1): void => {
    if (worn?.kind !== 'amount' || other?.kind !== 'amount') return;
    if (sign * compare(worn.amount, other.amount) >= 0) return;
    const message = `the wear limit ${worn.written} is tighter than the ${other.written} of new parts`;
    report(context, 'value', node.span, message, 'look at the sheet: the two may be exchanged');
  };
  tell(wear?.max, fresh?.max, 1);
  tell(wear?.min, fresh?.min, -1);
}
