import { boughtAs, type Known, partsCalled, partsMeant } from '../../checks/open/partsMeant.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { Part } from '../../layout/part.ts';
import type { PartAt } from '../../layout/readPart.ts';

/** One thing that was seen is two where it has two names. */
export const byName = (whole: Observation, known: Known): readonly Observation[] =>
  whole.on.length < 2
    ? [whole]
    : whole.on.map((name) => {
        const called = partsCalled(name, known).flatMap((each) => [
          each,
          ...boughtAs(each, whole.remedy, known),
        ]);
        const parts = whole.parts.filter((at) => called.some((each) => isSame(each, at)));
        return narrowed(whole, [name], parts);
      });

const isSame = (a: PartAt, b: PartAt): boolean =>
  a.part === b.part &&
  a.positions.length === b.positions.length &&
  a.positions.every((position) => b.positions.includes(position));

/** One line with those of its pieces that are left. */
export const asOne = (whole: Observation, left: readonly Observation[]): Observation =>
  narrowed(
    whole,
    left.flatMap(({ on }) => on),
    left.flatMap(({ parts }) => parts),
  );

const narrowed = (whole: Observation, on: readonly string[], parts: readonly PartAt[]): Observation => ({
  ...whole,
  on,
  parts,
});

/** What one line says of each part, by what is to be done with it; under no part what the shop alone knows by name. */
export function seenByPart(
  whole: Observation,
  partOf: (part: Part) => Part,
  known: Known,
): ReadonlyMap<Part | undefined, Observation> {
  const byPart = new Map<Part | undefined, Observation>();
  for (const name of whole.on) {
    const at = partsMeant(partsCalled(name, known), whole.remedy, known);
    for (const part of at.length === 0 ? [undefined] : new Set(at.map((each) => partOf(each.part)))) {
      const before = byPart.get(part);
      byPart.set(
        part,
        narrowed(
          whole,
          [...(before?.on ?? []), name],
          [...(before?.parts ?? []), ...at.filter((each) => partOf(each.part) === part)],
        ),
      );
    }
  }
  return byPart;
}

/** Of what one line says of several parts what it says of one, or of what that belongs to. */
export const seenOn = (part: Part, whole: Observation, known: Known): Observation =>
  seenByPart(whole, (each) => (known.parts.within(each).includes(part) ? part : each), known).get(part) ??
  whole;
