import type { Part, Parts } from '../../layout/part.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { relate } from '../../layout/relate.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { KnownParts } from '../session/part.ts';
import type { Named } from '../yaml/access.ts';
import type { Grade } from './grade.ts';

/** The parts that are made in sizes among some and what they are assembled from, each once. */
export function sizedWithin(all: readonly PartAt[], { parts, layout }: KnownParts): readonly PartAt[] {
  const found = new Map<Part, PartAt>();
  const take = (at: PartAt): void => {
    const before = found.get(at.part);
    found.set(at.part, before === undefined ? at : together(before, at));
  };
  for (const at of all) if (at.part.sized !== undefined) take(at);
  const named = new Set(found.keys());
  for (const { part, positions } of all) {
    for (const each of parts.within(part)) {
      if (each.sized === undefined || named.has(each)) continue;
      const here = positions.flatMap((position) => relate(layout, position, each.family) ?? []);
      // No position would mean all of them.
      if (positions.length === 0 || here.length > 0) take({ part: each, positions: here });
    }
  }
  return [...found.values()];
}

/** Of one part at several of its positions; all of it where one of the two is. */
const together = (a: PartAt, b: PartAt): PartAt => ({
  ...a,
  positions:
    a.positions.length === 0 || b.positions.length === 0
      ? []
      : [...new Set([...a.positions, ...b.positions])],
});

/**
 * The parts that a size is said of. Of a word for several, such as a crankshaft, those that are made so: its journals
 * under and not its thrust faces; and what is machined before what is bought for it.
 */
export function sizedAmong(
  named: readonly PartAt[],
  at: readonly PartAt[],
  grade: Grade,
  known: KnownParts,
): readonly PartAt[] {
  const all = sizedWithin(at, known);
  if (named.length > 0 && named.every(({ part }) => part.sized !== undefined)) {
    return all.filter(({ part }) => named.some((each) => each.part === part));
  }
  const alike = grade.by.n === 0n ? all : all.filter(({ part }) => part.sized?.made === wayOf(grade));
  const machined = alike.filter(({ part }) => part.sized?.fits === undefined);
  return machined.length > 0 ? machined : alike;
}

const wayOf = ({ by }: Grade): 'under' | 'over' => (by.n < 0n ? 'under' : 'over');

export function reportNoSizes({ name, span }: Named, { parts }: KnownParts, context: DocumentContext): void {
  const message = `no part that has size grades is called ${name.replaceAll('_', ' ')}`;
  report(context, 'value', span, message, `state the size of ${namesOf(parts)}; of others write a note`);
}

const namesOf = ({ all }: Parts): string =>
  all.flatMap(({ sized, plural }) => (sized === undefined ? [] : [plural])).join(', ');
