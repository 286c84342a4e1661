import type { NotOffered } from '../../../documents/parts/offeredPart.ts';
import type { WholeFit } from '../../../plan/fit/wholeParts.ts';
import type { Section } from '../page.ts';

/** A part that lies on the shelf and goes into the engine as a whole. */
export function wholeSection({ chosen, inPlaceOf }: WholeFit): Section {
  const { part, mark, lies } = chosen;
  return {
    title: `${part.label}: ${mark} of the shelf`,
    values: [{ take: mark, lies: lies ?? null, in_place_of: inPlaceOf.join(', ') }],
    lines: [
      lies === undefined ? 'its document does not say where it lies' : `lies: ${lies}`,
      `in place of: ${inPlaceOf.join(', ')}`,
      'what follows is chosen as if it were fitted',
    ],
  };
}

/** Parts with documents of their own that are not chosen, and why. */
export const notOfferedSections = (parts: readonly NotOffered[]): readonly Section[] =>
  parts.length === 0
    ? []
    : [
        {
          title: 'parts of the shelf that are not chosen',
          values: parts.map(({ called, why }) => ({ part: called, why })),
          lines: parts.map(({ called, why }) => `${called}: ${why}`),
        },
      ];
