import type { Row } from '../../../checks/judge/row.ts';
import type { Engine } from '../../../documents/assemble.ts';
import type { Observation } from '../../../documents/session/observations.ts';
import { BANK } from '../../../layout/family.ts';
import type { PartAt } from '../../../layout/readPart.ts';
import { relate } from '../../../layout/relate.ts';
import { renewedAs } from './wholeOf.ts';

/**
 * What there is but one of, or one to a bank, such as a crankshaft or a head, and is to be renewed as somebody saw or a crack
 * test showed: nothing that it is made of is cut or renewed by itself.
 */
export const wholesRenewed = (
  found: readonly Observation[],
  cracked: readonly Row[],
  { parts, document: { layout } }: Pick<Engine, 'parts' | 'document'>,
): readonly PartAt[] =>
  [
    ...found.filter(({ remedy }) => remedy === 'renew').flatMap((each) => each.parts),
    ...cracked.flatMap(({ characteristic: { of }, position }): readonly PartAt[] => {
      const part = parts.find(of ?? '');
      if (part === undefined) return [];
      const here = relate(layout, position, part.family) ?? [position];
      return [{ part, positions: part.family.isSingle ? [] : here }];
    }),
  ]
    .map((at) => ({ ...at, part: renewedAs(at.part, parts) }))
    .filter(({ part, isOneOfMany }) => part.family.isSingle || (part.family === BANK && isOneOfMany !== true))
    // A crankshaft is renewed whole, and of several heads those that were named or are cracked.
    .map(({ part, positions }) => ({
      part,
      positions: part.family.isSingle && part.calledBy === undefined ? [] : positions,
    }));
