import { isAt } from '../../../checks/history/dependsOn.ts';
import type { Part } from '../../../layout/part.ts';
import type { Position } from '../../../layout/position.ts';
import type { PlanContext } from '../context.ts';
import { foundAt } from '../damage.ts';
import { wholeOf } from './wholeOf.ts';

/** Whether a part at a position goes with what is renewed whole; without one, whether all of it does. */
export const isOfRenewedWhole = (
  { wholesRenewed, registry, engine }: PlanContext,
  part: Part,
  position?: Position,
): boolean =>
  wholesRenewed.some((whole) =>
    position === undefined
      ? whole.positions.length === 0 && registry.parts.within(whole.part).includes(part)
      : isAt(part.id, position, whole, registry, engine.document.layout),
  );

/** Whether a part is renewed by itself, as a liner or a piston: then none of it is cut. */
export const isRenewedAlone = (context: PlanContext, part: Part, position: Position): boolean =>
  wholeOf(part, context.registry.parts) === undefined &&
  (foundAt(context, part, position, ['renew']).some(({ parts }) =>
    parts.some(({ isOneOfMany }) => isOneOfMany !== true),
  ) ||
    context.cracked.some((row) => row.characteristic.of === part.id && row.position === position) ||
    isOfRenewedWhole(context, part, position));
