import { isAt } from '../../checks/history/dependsOn.ts';
import { depthAsked, isSurfaceOf } from '../../checks/open/deepFound.ts';
import { isMadeAnew } from '../../checks/open/openFound.ts';
import type { Observation, Remedy } from '../../documents/session/observations.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { compare, greatest } from '../../quantity/fraction.ts';
import type { Damage } from '../cut/cleanUp.ts';
import type { PlanContext } from './context.ts';

/** What was seen of a part at a position and is to be dealt with in one of these ways. */
export const foundAt = (
  { found, registry, engine }: PlanContext,
  { id }: Part,
  position: Position,
  ways: readonly (Remedy | undefined)[],
  counts: (seen: Part) => boolean = () => true,
): readonly Observation[] =>
  found.filter(
    ({ parts, remedy }) =>
      ways.includes(remedy) &&
      parts.some((each) => counts(each.part) && isAt(id, position, each, registry, engine.document.layout)),
  );

/** What was seen of the surface of a journal or bore that is still there: of a head or block that is scored itself, no hole in it is. */
export const damageFoundAt = (
  context: PlanContext,
  part: Part,
  position: Position,
  ways: readonly (Remedy | undefined)[],
): readonly Observation[] =>
  foundAt(context, part, position, ways, (seen) => isSurfaceOf(part, seen, context.registry)).filter(
    (each) => !isCutAway(context, part, position, each),
  );

/** Of a crankshaft that was scored all over and had its mains ground, the mains are clean and the pins are not. */
function isCutAway(
  { state: { run }, registry, engine }: PlanContext,
  { id }: Part,
  position: Position,
  { place }: Observation,
): boolean {
  const seenIn = run.findIndex(({ observations }) => observations.some((each) => each.place === place));
  return run
    .slice(seenIn + 1)
    .some(({ partChanges }) =>
      partChanges.some((change) =>
        isMadeAnew(change, (at) => isAt(id, position, at, registry, engine.document.layout)),
      ),
    );
}

/** How deep a journal or bore is scored: the deepest; not measured where any of it was not. */
export function damageAt(context: PlanContext, part: Part, position: Position): Damage {
  const seen = scoresAt(context, part, position);
  if (seen.length === 0) return 'none';
  const depths = seen.flatMap(({ depth }) => depth?.amount ?? []);
  return depths.length < seen.length ? 'not measured' : greatest(depths);
}

/** Whether check asks if the deepest is not a slip of the pen. */
export function isDepthDoubted(context: PlanContext, part: Part, position: Position): boolean {
  const damage = damageAt(context, part, position);
  return scoresAt(context, part, position).some(
    (each) =>
      typeof damage !== 'string' &&
      each.depth !== undefined &&
      compare(each.depth.amount, damage) === 0 &&
      depthAsked(each, context.engine) !== undefined,
  );
}

const scoresAt = (context: PlanContext, part: Part, position: Position): readonly Observation[] =>
  damageFoundAt(context, part, position, ['machine', 'hold', undefined]);
