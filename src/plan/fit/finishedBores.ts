import { clearance } from '../../characteristics/clearance.ts';
import { gridOfOne } from '../../characteristics/grid.ts';
import { fittedSize } from '../../checks/grades/madeSize.ts';
import { type Grade, sameGrade } from '../../documents/grades/grade.ts';
import type { Position } from '../../layout/position.ts';
import { exactly } from '../../measurement/value.ts';
import { add, type Fraction, subtract, ZERO } from '../../quantity/fraction.ts';
import { type PlanContext, sizeOfPart } from '../work/context.ts';
import { inPlaceAt } from './inPlace.ts';
import type { Asked, PistonFit, PistonProblem } from './pistonChoice.ts';
import { lackingOf, sizesOf } from './pistonSizes.ts';
import { type Bore, boresLeft, fitPistons } from './pistons.ts';
import type { ShelfPiston, ShelfPistons } from './shelfPistons.ts';

/** By the sizes of bores as they were read, where the pistons bear. */
export function pistonsOfFinished(
  context: PlanContext,
  { bore, fit, places: all, toBeRenewed }: Asked,
  { pistons, notOffered }: ShelfPistons,
): PistonFit {
  const inPlace = all.flatMap(({ position }) => inPlaceAt(context, fit, position) ?? []);
  const isIn = ({ mark }: ShelfPiston): boolean => inPlace.some((each) => each.mark === mark);
  const shelf = { pistons: pistons.filter((each) => !isIn(each)), notOffered };
  const asked = all.filter((each) => !inPlace.some(({ position }) => position === each.position));
  const size = sizeOfPart(context, bore);
  const gradeAt = (position: Position): Grade | undefined =>
    size && fittedSize(context.engine, undefined, size, position).grade;
  const bores = asked.flatMap(({ position, aim }): readonly PlacedBore[] => {
    const row = context.state.rows.find((each) => each.characteristic === size && each.position === position);
    const grid = row?.routes[0]?.route.grid;
    // Where the piston bears: along the thrust axis.
    const room = grid && clearance(grid, gridOfOne(exactly(ZERO)), ['thrust']);
    const grade = gradeAt(position);
    if (room === undefined || grade === undefined) return [];
    const mean = room.mean.amount;
    const [below, above] = [subtract(mean, room.least.amount), subtract(room.greatest.amount, mean)];
    const takes = ({ size: made }: ShelfPiston): boolean => sameGrade(made, grade);
    return [{ position, name: position.name, size: mean, below, above, wanted: aim, grade, takes }];
  });
  const none = { clearance: fit, places: [], inPlace, isToBeBored: false, toBeRenewed };
  if (asked.length === 0) return { ...none, problem: undefined };
  if (bores.length < asked.length) return { ...none, problem: { kind: 'not measured' } };
  const sizes = sizesOf(bores, shelf);
  const lacking = lackingOf(sizes);
  if (lacking.length > 0) return { ...none, problem: { kind: 'too few', lacking } };
  const sized = sizes.flatMap((each) => each.pistons);
  const spread = context.engine.planning.weightSpread?.amount;
  const set = fitPistons(bores, sized, spread, weighed(pistons.filter(isIn)));
  if (set === undefined) return { ...none, problem: whyNoSet(bores, sized, spread) };
  const places = bores.flatMap((each, index) => {
    const [piston, mean] = [set.pistons[index], set.clearances[index]];
    if (piston === undefined || mean === undefined) return [];
    const [least, greatest] = [subtract(mean, each.below), add(mean, each.above)];
    return [{ position: each.position, piston, size: each.size, least, greatest, wanted: each.wanted }];
  });
  return { ...none, places, problem: undefined };
}

/** Nobody can hold others to a weight that is not known. */
const weighed = (pistons: readonly ShelfPiston[]): readonly ShelfPiston[] =>
  pistons.filter(({ weight }) => weight !== undefined);

interface PlacedBore extends Bore<ShelfPiston> {
  readonly position: Position;
  readonly grade: Grade;
}

function whyNoSet(
  bores: readonly PlacedBore[],
  pistons: readonly ShelfPiston[],
  spread: Fraction | undefined,
): PistonProblem {
  const left = boresLeft(bores, pistons);
  if (left.length === 0 && spread !== undefined) return { kind: 'of no one weight', spread };
  const ideal = left.map(({ position, size, wanted }) => ({
    position,
    diameter: subtract(size, wanted.middle),
  }));
  return { kind: 'nothing fits', ideal };
}
