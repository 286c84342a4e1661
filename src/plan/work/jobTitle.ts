import type { Operation } from '../../documents/planning/operations.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { relateOne } from '../../layout/relate.ts';
import { placesCut } from './cut.ts';
import type { Job } from './job.ts';
import { placesText } from './placesText.ts';

/** `grind main journals 1 to 7`, `renew main shell 3`. */
export function titleOf(job: Job, { layout }: { readonly layout: Layout }): string {
  const { name, part, at } = job;
  if (at !== undefined) return name;
  const places = placesOf(job, layout);
  const called =
    part !== undefined && new Set(places).size === 1 ? name.replace(part.plural, part.label) : name;
  return [called, placesText(places, layout)].filter(Boolean).join(' ');
}

/** Their names say where. */
const NAMED_BY_THEMSELVES: readonly Operation[] = ['find the cause', 'adjust', 'decide about'];

/** Where it is done, none for all of the part; of what is measured each figure names its own place. */
export function placesOf(job: Job, layout: Layout): readonly Position[] {
  const { operation, part, at, cut, rows, found, suspects } = job;
  if (at !== undefined) return [at];
  const ofPart = cut?.part === part ? cut : undefined;
  if (ofPart !== undefined && operation !== 'renew') return placesCut(ofPart);
  if (part === undefined || NAMED_BY_THEMSELVES.includes(operation)) return [];
  const seen = found.flatMap(({ parts }) => parts.filter((each) => each.part === part));
  if (seen.some(({ positions, isOneOfMany }) => positions.length === 0 && !isOneOfMany)) return [];
  const called = seen.flatMap(({ positions }) => positions);
  // Heads that were seen are called by their cylinders; a figure of one is that of the whole deck.
  if (part.family.isSingle) return part.calledBy !== undefined && rows.length === 0 ? called : [];
  const cutAt = ofPart?.groups.flatMap(({ places }) => places) ?? [];
  const inDoubt = suspects.map(({ row }) => row);
  const measured = [...cutAt, ...rows, ...inDoubt].map(({ position }) => position);
  return [...measured, ...called].flatMap((position) =>
    position.family === part.calledBy && rows.length === 0
      ? position
      : (relateOne(layout, position, part.family) ?? []),
  );
}
