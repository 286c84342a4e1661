import type { Row } from '../../../checks/judge/row.ts';
import type { Observation } from '../../../documents/session/observations.ts';
import type { Parts } from '../../../layout/part.ts';
import type { PartAt } from '../../../layout/readPart.ts';
import { renewedAs } from './wholeOf.ts';

/**
 * What there is but one of, such as a crankshaft, and is to be renewed as somebody saw or a crack test showed: nothing that it
 * is made of is cut or renewed by itself.
 */
export const wholesRenewed = (
  found: readonly Observation[],
  cracked: readonly Row[],
  parts: Parts,
): readonly PartAt[] =>
  [
    ...found.filter(({ remedy }) => remedy === 'renew').flatMap((each) => each.parts),
    ...cracked.flatMap(({ characteristic: { of }, position }) => {
      const part = parts.find(of ?? '');
      return part === undefined ? [] : [{ part, positions: [position] }];
    }),
  ]
    .map(({ part, positions }) => ({ part: renewedAs(part, parts), positions }))
    .filter(({ part }) => part.family.isSingle)
    // A crankshaft is renewed whole, and of several heads those that were named or tested.
    .map(({ part, positions }) => ({ part, positions: part.calledBy === undefined ? [] : positions }));
