import type { Engine } from '../../documents/assemble.ts';
import type { Remedy } from '../../documents/session/observations.ts';
import { type PartAt, readPart } from '../../layout/readPart.ts';

export type Known = Pick<Engine, 'parts' | 'document'>;

export const partsCalled = (name: string, { parts, document: { layout } }: Known): readonly PartAt[] => {
  const meaning = readPart(name, parts, layout);
  return meaning.kind === 'parts' ? meaning.at : [];
};

/** What one name means for what is to become of it: without what belongs to it, and of what is bought as shells these. */
export const partsMeant = (
  at: readonly PartAt[],
  remedy: Remedy | undefined,
  known: Known,
): readonly PartAt[] => withoutComponents(at, known).flatMap((each) => boughtAs(each, remedy, known));

/** `rod 4` is the rod with its big end: that is no part of its own here. */
const withoutComponents = (at: readonly PartAt[], { parts }: Known): readonly PartAt[] =>
  at.filter(({ part }) => !at.some((each) => each.part !== part && parts.within(each.part).includes(part)));

/** Shells are bought for their journals, those of the mains and those of the rods; a main that is renewed is its shells. */
export function boughtAs(
  at: PartAt,
  remedy: Remedy | undefined,
  { parts, document: { layout } }: Known,
): readonly PartAt[] {
  const kinds = parts.within(at.part).filter((each) => each !== at.part);
  const shells = kinds.filter(({ sized }) => sized?.liesIn !== undefined);
  const bought = at.part.family.isSingle
    ? kinds.filter(({ family }) => layout.positionsOf(family).length > 0)
    : shells;
  return shells.length > 0 && (at.part.family.isSingle || remedy === 'renew')
    ? bought.map((part) => ({ ...at, part }))
    : [at];
}
