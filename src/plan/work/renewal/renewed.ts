import { isAt } from '../../../checks/history/dependsOn.ts';
import type { Part } from '../../../layout/part.ts';
import type { Position } from '../../../layout/position.ts';
import type { PlanContext } from '../context.ts';
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
  (renewedWith(context, part, position) !== undefined || isOfRenewedWhole(context, part, position));

/** What is to be renewed at a position, of which a part is: of the housing of a rod that is bent, the rod. */
export function renewedWith(context: PlanContext, { id }: Part, position: Position): Part | undefined {
  const { cracked, found, registry, engine } = context;
  const seen = found
    .filter(
      ({ remedy, parts }) => remedy === 'renew' && parts.some(({ isOneOfMany }) => isOneOfMany !== true),
    )
    .flatMap(({ parts }) => parts);
  const tested = cracked.flatMap(({ characteristic: { of }, position: at }) => {
    const part = registry.parts.find(of ?? '');
    return part === undefined ? [] : [{ part, positions: [at] }];
  });
  return [...seen, ...tested].find((each) => isAt(id, position, each, registry, engine.document.layout))
    ?.part;
}
