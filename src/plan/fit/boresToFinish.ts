import { type Grade, sameGrade } from '../../documents/grades/grade.ts';
import type { Position } from '../../layout/position.ts';
import { add, ZERO } from '../../quantity/fraction.ts';
import type { PlanContext } from '../work/context.ts';
import type { Cut } from '../work/cut.ts';
import type { Asked, PistonFit, PistonPlace } from './pistonChoice.ts';
import { lackingOf, sizesOf } from './pistonSizes.ts';
import { setsByWeight } from './pistons.ts';
import type { ShelfPiston, ShelfPistons } from './shelfPistons.ts';
import type { Wanted } from './wanted.ts';

/** Each bore is finished to its own piston, so that any of one weight will do; the first set that is large enough. */
export function pistonsToBoreFor(
  context: PlanContext,
  cut: Cut,
  { fit, places: asked, toBeRenewed }: Asked,
  shelf: ShelfPistons,
): PistonFit {
  const none = { clearance: fit, places: [], inPlace: [], isToBeBored: true, toBeRenewed };
  const choices = cut.groups.map(({ deciding: { choice } }) => choice);
  // One that was not read is bored to the step of the others; one that stays as it is keeps its piston.
  const bores = asked.flatMap(({ position, aim }) => {
    const own = cut.groups.find(({ places }) => places.some((place) => place.position === position));
    const group = own ?? (cut.unmeasured.includes(position) ? cut.groups[0] : undefined);
    const choice = group?.deciding.choice;
    return choice?.kind === 'step' ? [{ position, aim, grade: choice.step.grade }] : [];
  });
  if (bores.length === 0 || choices.some(({ kind }) => kind !== 'step'))
    return { ...none, problem: { kind: 'no step' } };
  // What has run went with a bore that is cut away.
  const sizes = sizesOf(bores, {
    ...shelf,
    pistons: shelf.pistons.filter(({ ranIn }) => ranIn === undefined),
  });
  const lacking = lackingOf(sizes);
  if (lacking.length > 0) return { ...none, problem: { kind: 'too few', lacking } };
  const spread = context.engine.planning.weightSpread?.amount;
  const sets = setsByWeight(
    sizes.flatMap(({ pistons }) => pistons),
    spread,
  );
  const places = sets.map((set) => finishedTo(bores, set)).find(({ length }) => length === bores.length);
  return places === undefined
    ? { ...none, problem: { kind: 'of no one weight', spread: spread ?? ZERO } }
    : { ...none, places, problem: undefined };
}

interface ToBeBored {
  readonly position: Position;
  readonly aim: Wanted;
  readonly grade: Grade;
}

/** Each bore with the next piston of its size, as far as there is one. */
function finishedTo(bores: readonly ToBeBored[], set: readonly ShelfPiston[]): readonly PistonPlace[] {
  const left = [...set];
  return bores.flatMap(({ position, aim, grade }): readonly PistonPlace[] => {
    const at = left.findIndex(({ size }) => sameGrade(size, grade));
    const [piston] = at < 0 ? [] : left.splice(at, 1);
    if (piston === undefined) return [];
    const size = add(piston.diameter, aim.middle);
    return [{ position, piston, size, least: aim.middle, greatest: aim.middle, wanted: aim }];
  });
}
