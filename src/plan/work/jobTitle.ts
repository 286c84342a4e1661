import type { Operation } from '../../documents/planning/operations.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import type { Job } from './job.ts';
import { placesText } from './placesText.ts';

/** `grind main journals 1 to 7`, `renew main shell 3`. */
export function titleOf(job: Job, { layout }: { readonly layout: Layout }): string {
  const { name, part } = job;
  const places = placesOf(job);
  const called =
    part !== undefined && new Set(places).size === 1 ? name.replace(part.plural, part.label) : name;
  return [called, placesText(places, layout)].filter(Boolean).join(' ');
}

/** Their names say where. */
const NAMED_BY_THEMSELVES: readonly Operation[] = ['find the cause', 'adjust', 'decide about'];

/** Where it is done; of what is measured each figure names its own place. */
export function placesOf({ operation, part, cut, rows, found }: Job): readonly Position[] {
  if (cut !== undefined && cut.part === part)
    return cut.groups.flatMap(({ places }) => places.map(({ position }) => position));
  if (part === undefined || NAMED_BY_THEMSELVES.includes(operation)) return [];
  const seen = found.flatMap(({ parts }) =>
    parts.flatMap((each) => (each.part === part ? each.positions : [])),
  );
  return [...rows.map(({ position }) => position), ...seen].filter(({ family }) => family === part.family);
}
