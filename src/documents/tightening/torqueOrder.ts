import type { Joint, Places } from '../../torque/joint.ts';
import { generateOrder, orderOfNumbers } from '../../torque/order/orders.ts';
import { type DocumentContext, report } from '../amount.ts';
import { entriesOf, itemsOf, scalarOf, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

export interface ReadOrder {
  readonly order: readonly string[];
  readonly from: Joint['orderFrom'];
}

/** The maker's order as names or as numbers, `centre out` made from written places, else as they are listed. */
export function readOrder(
  node: Node | undefined,
  names: readonly string[],
  places: Places | undefined,
  context: DocumentContext,
): ReadOrder {
  const listed: ReadOrder = { order: names, from: 'listed' };
  if (node === undefined) return listed;
  if (node.kind === 'list') {
    return { order: itemsOf(node).flatMap((item) => textOf(item) ?? []), from: 'maker' };
  }
  if (node.kind === 'map') {
    const found = orderOfNumbers(numbersIn(node));
    if ('order' in found) return { order: found.order, from: 'maker' };
    report(context, 'value', node.span, found.problem);
    return listed;
  }
  if (places !== undefined) {
    return { order: generateOrder(places.kind, places.positions), from: 'generated' };
  }
  report(
    context,
    'missing-key',
    node.span,
    'an order cannot be made without knowing where the fasteners stand',
    'add positions, such as { caps: 5, each_cap: 2 } or [[1L, 2L], [1R, 2R]]',
  );
  return listed;
}

const numbersIn = (node: Node): ReadonlyMap<string, number> =>
  new Map(
    entriesOf(node).flatMap(({ key, node: number }): readonly (readonly [string, number])[] => {
      const value = scalarOf(number)?.value;
      return typeof value === 'number' ? [[key, value]] : [];
    }),
  );
