import type { Characteristic } from '../../characteristics/characteristic.ts';
import { clearance } from '../../characteristics/clearance.ts';
import { gridOfOne } from '../../characteristics/grid.ts';
import { fittedSize } from '../../checks/grades/madeSize.ts';
import { type Grade, sameGrade } from '../../documents/grades/grade.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { exactly } from '../../measurement/value.ts';
import { add, type Fraction, subtract, ZERO } from '../../quantity/fraction.ts';
import { type PlanContext, sizeOfPart } from '../work/context.ts';
import type { Cut } from '../work/cut.ts';
import { isOfRenewedWhole, isRenewedAlone } from '../work/renewal/renewed.ts';
import { type InPlace, inPlaceAt } from './inPlace.ts';
import { type Bore, fitPistons, setsByWeight } from './pistons.ts';
import { pistonsOfSize, type ShelfPiston, type ShelfPistons } from './shelfPistons.ts';
import { type Wanted, wantedAt } from './wanted.ts';

/** Pistons chosen for all cylinders, or the sizes to which bores that are still to be bored are finished for them. */
export interface PistonFit {
  readonly clearance: Characteristic;
  readonly places: readonly PistonPlace[];
  readonly inPlace: readonly InPlace[];
  /** Bores are still to be cut: `size` is what each is finished to. */
  readonly isToBeBored: boolean;
  readonly problem: PistonProblem | undefined;
}

export interface PistonPlace {
  readonly position: Position;
  readonly piston: ShelfPiston;
  /** Of the bore: as measured, or to be finished to. */
  readonly size: Fraction;
  readonly least: Fraction;
  readonly greatest: Fraction;
  readonly wanted: Wanted;
}

export type PistonProblem = 'no limits' | 'to be renewed' | 'not measured' | 'too few' | 'nothing fits';

/** The first part that is bought for a bore and of which pistons are on the shelf. */
export function pistonFit(
  context: PlanContext,
  cuts: readonly Cut[],
  shelf: ShelfPistons,
): PistonFit | undefined {
  const { engine, registry } = context;
  const part = registry.parts.find('piston');
  const bore = part && registry.parts.find(part.sized?.fits ?? '');
  const fit = registry.all.find(({ of, figure }) => of === part?.id && figure === 'clearance');
  if (bore === undefined || fit === undefined || shelf.pistons.length === 0) return undefined;
  const positions = engine.document.layout.positionsOf(bore.family);
  const places = positions.flatMap((position): readonly AskedBore[] => {
    const aim = wantedAt(context, fit, position);
    return aim === undefined ? [] : [{ position, aim }];
  });
  const none = { clearance: fit, places: [], inPlace: [], isToBeBored: false };
  if (places.length < positions.length) return { ...none, problem: 'no limits' };
  if (
    isOfRenewedWhole(context, bore) ||
    positions.some((position) => isRenewedAlone(context, bore, position))
  )
    return { ...none, problem: 'to be renewed' };
  const cut = cuts.find((each) => each.part === bore);
  return cut === undefined
    ? ofFinished(context, { bore, fit, places }, shelf)
    : toBeBored(context, cut, { bore, fit, places }, shelf);
}

interface Asked {
  readonly bore: Part;
  readonly fit: Characteristic;
  readonly places: readonly AskedBore[];
}

interface AskedBore {
  readonly position: Position;
  readonly aim: Wanted;
}

const spreadOf = ({ engine }: PlanContext): Fraction | undefined => engine.planning.weightSpread?.amount;

function ofFinished(
  context: PlanContext,
  { bore, fit, places: all }: Asked,
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
  const none = { clearance: fit, places: [], inPlace, isToBeBored: false };
  if (asked.length === 0) return { ...none, problem: undefined };
  if (bores.length < asked.length) return { ...none, problem: 'not measured' };
  const sized = ofSizes(
    bores.map(({ grade }) => grade),
    shelf,
  );
  if (sized === undefined) return { ...none, problem: 'too few' };
  const set = fitPistons(bores, sized, spreadOf(context), weighed(pistons.filter(isIn)));
  if (set === undefined) return { ...none, problem: 'nothing fits' };
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

/** Of the shelf all that are of any of the sizes; undefined where there are not enough of one of them. */
function ofSizes(
  grades: readonly Grade[],
  shelf: ShelfPistons,
  isOffered: (piston: ShelfPiston) => boolean = () => true,
): readonly ShelfPiston[] | undefined {
  const distinct = grades.filter(
    (grade, index) => grades.findIndex((each) => sameGrade(each, grade)) === index,
  );
  const found = distinct.map((grade) => pistonsOfSize(shelf, grade).filter(isOffered));
  const isEnough = distinct.every(
    (grade, index) => (found[index]?.length ?? 0) >= grades.filter((each) => sameGrade(each, grade)).length,
  );
  return isEnough ? found.flat() : undefined;
}

/** Each bore is finished to its own piston, so that any of one weight will do; the first set that is large enough. */
function toBeBored(
  context: PlanContext,
  cut: Cut,
  { fit, places: asked }: Asked,
  shelf: ShelfPistons,
): PistonFit {
  const none = { clearance: fit, places: [], inPlace: [], isToBeBored: true };
  const choices = cut.groups.map(({ deciding: { choice } }) => choice);
  if (choices.some(({ kind }) => kind === 'beyond the last step'))
    return { ...none, problem: 'to be renewed' };
  // One that was not read is bored to the step of the others; one that stays as it is keeps its piston.
  const bores = asked.flatMap(({ position, aim }) => {
    const own = cut.groups.find(({ places }) => places.some((place) => place.position === position));
    const group = own ?? (cut.unmeasured.includes(position) ? cut.groups[0] : undefined);
    const choice = group?.deciding.choice;
    return choice?.kind === 'step' ? [{ position, aim, grade: choice.step.grade }] : [];
  });
  if (bores.length === 0 || choices.some(({ kind }) => kind !== 'step'))
    return { ...none, problem: 'nothing fits' };
  // What has run went with a bore that is cut away.
  const sized = ofSizes(
    bores.map(({ grade }) => grade),
    shelf,
    ({ ranIn }) => ranIn === undefined,
  );
  if (sized === undefined) return { ...none, problem: 'too few' };
  const places = setsByWeight(sized, spreadOf(context))
    .map((set) => finishedTo(bores, set))
    .find(({ length }) => length === bores.length);
  return places === undefined
    ? { ...none, problem: 'nothing fits' }
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
