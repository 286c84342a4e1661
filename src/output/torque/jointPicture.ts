import type { Joint } from '../../torque/joint.ts';
import { numbersOfOrder } from '../../torque/order/orders.ts';
import type { JointPicture } from '../page/pictures/joint.ts';

/** Undefined where nothing says where its fasteners are. */
export function jointPicture({ sequence, places, orderFrom }: Joint): JointPicture | undefined {
  if (places === undefined || places.positions.length < 2) return undefined;
  const numbers = orderFrom === 'listed' ? new Map<string, number>() : numbersOfOrder(sequence.order);
  return {
    kind: 'joint',
    title: `${sequence.joint}: order of tightening`,
    description: `${orderFrom === 'listed' ? 'no order is stated: as listed' : 'in this order'}: ${sequence.order.join(', ')}`,
    form: places.kind,
    fasteners: places.positions.map(({ name, x, y }) => ({ name, x, y, order: numbers.get(name) })),
  };
}
