import { type Grade, STANDARD, sameGrade } from '../../documents/grades/grade.ts';
import type { PartGrade } from '../../documents/grades/movement.ts';
import type { SizeStatement } from '../../documents/grades/statements.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';
import type { Mate, SurfaceSide } from './mates.ts';

/** A statement of a document, and in which of them: the engine document comes first, then the sessions. */
export interface Saying {
  readonly statement: SizeStatement;
  readonly when: number;
}

/** What is said of one part at one position, and when it was said last. */
export interface Said {
  readonly grade: Partial<PartGrade>;
  readonly when: number;
}

/** The later word counts; one half of a pair of shells may be spoken of alone. */
export function saidOf(sayings: readonly Saying[], part: Part, position: Position): Said | undefined {
  let said: Said | undefined;
  let identity: string | undefined;
  for (const { statement, when } of sayings) {
    const { at, grade, isWhole } = statement;
    if (at.part !== part || (at.positions.length > 0 && !at.positions.includes(position))) continue;
    const isAnother =
      statement.identity !== undefined && identity !== undefined && statement.identity !== identity;
    said = { grade: { ...(isWhole || isAnother ? {} : said?.grade), ...grade }, when };
    identity = statement.identity ?? identity;
  }
  return said;
}

/** The size of a mate in one place or several, where all of them agree: the rods on a pin. */
export function agreedOf(
  { part, its }: Mate,
  position: Position,
  sayings: readonly Saying[],
  layout: Layout,
): Grade | undefined {
  const all = (relate(layout, position, part.family) ?? []).map((at) =>
    sideOf(saidOf(sayings, part, at), its),
  );
  const [first] = all;
  return first !== undefined && all.every((each) => each !== undefined && sameGrade(each, first))
    ? first
    : undefined;
}

/** Whether the part that one was bought for was machined to another size after it was said of which size that one is. */
export function isOvertaken(
  { when }: Said,
  { part, its, leads }: Mate,
  position: Position,
  sayings: readonly Saying[],
  layout: Layout,
): boolean {
  const before = sayings.filter((each) => each.when <= when);
  return (
    leads &&
    (relate(layout, position, part.family) ?? []).some((at) => {
      const now = saidOf(sayings, part, at);
      const then = sideOf(saidOf(before, part, at), its) ?? STANDARD;
      return now !== undefined && now.when > when && !sameGrade(then, sideOf(now, its) ?? STANDARD);
    })
  );
}

/** Halves that are unlike say nothing of what they go with. */
function sideOf(said: Said | undefined, side: SurfaceSide): Grade | undefined {
  const { upper, lower, outside } = said?.grade ?? {};
  if (side === 'outside') return outside;
  return upper !== undefined && lower !== undefined && sameGrade(upper, lower) ? upper : undefined;
}
