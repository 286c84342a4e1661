import type { Part, Parts } from '../../../layout/part.ts';
import type { Position } from '../../../layout/position.ts';
import type { PlanContext } from '../context.ts';
import { foundAt } from '../damage.ts';
import { wholeOf } from './wholeOf.ts';

/** A journal is renewed with its crankshaft. */
export const renewedAs = (part: Part, parts: Parts): Part => wholeOf(part, parts) ?? part;

/**
 * What there is but one of, such as a crankshaft, and is to be renewed as somebody saw or a crack test showed: nothing that it
 * is made of is cut or renewed by itself.
 */
export const wholesRenewed = ({ found, cracked, registry: { parts } }: PlanContext): readonly Part[] =>
  [
    ...found.filter(({ remedy }) => remedy === 'renew').flatMap((each) => each.parts.map(({ part }) => part)),
    ...cracked.flatMap(({ characteristic: { of } }) => parts.find(of ?? '') ?? []),
  ]
    .map((part) => renewedAs(part, parts))
    .filter(({ family }) => family.isSingle);

export const isOfRenewedWhole = (context: PlanContext, part: Part): boolean =>
  wholesRenewed(context).some((whole) => context.registry.parts.within(whole).includes(part));

/** Whether a part is renewed by itself, as a liner or a piston: then none of it is cut. */
export const isRenewedAlone = (context: PlanContext, part: Part, position: Position): boolean =>
  wholeOf(part, context.registry.parts) === undefined &&
  (foundAt(context, part, position, ['renew']).some(({ parts }) =>
    parts.some(({ isOneOfMany }) => isOneOfMany !== true),
  ) ||
    context.cracked.some((row) => row.characteristic.of === part.id && row.position === position));
