import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { PlanContext } from './context.ts';
import { foundAt } from './damage.ts';
import { wholeOf } from './wholeOf.ts';

/** Whether what somebody saw has a part renewed by itself, as a liner or a piston: then none of it is cut. */
export const isRenewedAlone = (context: PlanContext, part: Part, position: Position): boolean =>
  wholeOf(part, context.registry.parts) === undefined &&
  foundAt(context, part, position, ['renew']).some(({ parts }) =>
    parts.some(({ isOneOfMany }) => isOneOfMany !== true),
  );
