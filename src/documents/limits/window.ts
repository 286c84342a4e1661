import type { Fraction } from '../../quantity/fraction.ts';
import type { Quantity, Unit } from '../../quantity/units.ts';
import { type DocumentContext, parseAmount, readAmount, report } from '../amount.ts';
import { childOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { printedRange } from './printedRange.ts';

/** From a least to a greatest amount, in the base unit; one figure is both. */
export interface Window {
  readonly least: Fraction;
  readonly greatest: Fraction;
  /** The unit that it is written in. */
  readonly unit: Unit;
}

/** `40`, `95 N m`, `58 to 69`, or `{ min, max }`; undefined, told already, where it is none of them. */
export function readWindow(
  node: Node | undefined,
  quantity: Quantity,
  context: DocumentContext,
): Window | undefined {
  if (node === undefined) return undefined;
  if (node.kind === 'map') return readEnds(node, quantity, context);
  const range = printedRange(node);
  if (range === undefined) {
    const amount = readAmount(node, quantity, context);
    return amount && { least: amount.amount, greatest: amount.amount, unit: amount.unit };
  }
  const least = parseAmount(range[0], node.span, quantity, context);
  const greatest = parseAmount(range[1], node.span, quantity, context);
  return least && greatest && { least: least.amount, greatest: greatest.amount, unit: greatest.unit };
}

function readEnds(node: Node, quantity: Quantity, context: DocumentContext): Window | undefined {
  const [min, max] = [childOf(node, 'min'), childOf(node, 'max')];
  if (min === undefined || max === undefined) {
    const lacking = min === undefined ? 'least' : 'greatest';
    return report(context, 'missing-key', node.span, `the window has no ${lacking}`, 'give min and max');
  }
  const [least, greatest] = [readAmount(min, quantity, context), readAmount(max, quantity, context)];
  return least && greatest && { least: least.amount, greatest: greatest.amount, unit: greatest.unit };
}
