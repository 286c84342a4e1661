import type { Row } from '../../../checks/judge/row.ts';
import type { Observation } from '../../../documents/session/observations.ts';
import type { Part, Parts } from '../../../layout/part.ts';
import { renewedAs } from './wholeOf.ts';

/**
 * What there is but one of, such as a crankshaft, and is to be renewed as somebody saw or a crack test showed: nothing that it
 * is made of is cut or renewed by itself.
 */
export const wholesRenewed = (
  found: readonly Observation[],
  cracked: readonly Row[],
  parts: Parts,
): readonly Part[] =>
  [
    ...found.filter(({ remedy }) => remedy === 'renew').flatMap((each) => each.parts.map(({ part }) => part)),
    ...cracked.flatMap(({ characteristic: { of } }) => parts.find(of ?? '') ?? []),
  ]
    .map((part) => renewedAs(part, parts))
    .filter(({ family }) => family.isSingle);
