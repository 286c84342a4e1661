import type { Part, Parts } from '../../../layout/part.ts';

/**
 * What a ground surface is of one piece with, so that none of it can be renewed alone: the crankshaft of a journal. Undefined
 * of what is replaced by itself, such as a cylinder by its liner.
 */
export const wholeOf = ({ id, sized }: Part, parts: Parts): Part | undefined =>
  sized?.made !== 'under' || sized.fits !== undefined
    ? undefined
    : parts.all.find(({ family, assembledFrom }) => family.isSingle && assembledFrom.includes(id));

/** A journal is renewed with its crankshaft. */
export const renewedAs = (part: Part, parts: Parts): Part => wholeOf(part, parts) ?? part;
