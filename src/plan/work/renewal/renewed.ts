import type { Part } from '../../../layout/part.ts';
import type { Position } from '../../../layout/position.ts';
import type { PlanContext } from '../context.ts';
import { foundAt } from '../damage.ts';
import { wholeOf } from './wholeOf.ts';

export const isOfRenewedWhole = (context: PlanContext, part: Part): boolean =>
  context.wholesRenewed.some((whole) => context.registry.parts.within(whole).includes(part));

/** Whether a part is renewed by itself, as a liner or a piston: then none of it is cut. */
export const isRenewedAlone = (context: PlanContext, part: Part, position: Position): boolean =>
  wholeOf(part, context.registry.parts) === undefined &&
  (foundAt(context, part, position, ['renew']).some(({ parts }) =>
    parts.some(({ isOneOfMany }) => isOneOfMany !== true),
  ) ||
    context.cracked.some((row) => row.characteristic.of === part.id && row.position === position));
