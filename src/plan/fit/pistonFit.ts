import type { Characteristic } from '../../characteristics/characteristic.ts';
import { clearance } from '../../characteristics/clearance.ts';
import { gridOfOne } from '../../characteristics/grid.ts';
import { fittedSize } from '../../checks/grades/madeSize.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { exactly } from '../../measurement/value.ts';
import { add, type Fraction, subtract, ZERO } from '../../quantity/fraction.ts';
import { type PlanContext, sizeOfPart } from '../work/context.ts';
import type { Cut } from '../work/cut.ts';
import { isOfRenewedWhole, isRenewedAlone } from '../work/renewal/renewed.ts';
import { type Bore, fitPistons, setsByWeight } from './pistons.ts';
import { pistonsOfSize, type ShelfPiston, type ShelfPistons } from './shelfPistons.ts';
import { type Wanted, wantedAt } from './wanted.ts';

/** Pistons chosen for all cylinders, or the sizes to which bores that are still to be bored are finished for them. */
export interface PistonFit {
  readonly clearance: Characteristic;
  readonly places: readonly PistonPlace[];
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
  const wanted = positions.map((position) => wantedAt(context, fit, position));
  const none = { clearance: fit, places: [], isToBeBored: false };
  if (wanted.some((each) => each === undefined)) return { ...none, problem: 'no limits' };
  if (
    isOfRenewedWhole(context, bore) ||
    positions.some((position) => isRenewedAlone(context, bore, position))
  )
    return { ...none, problem: 'to be renewed' };
  const sizes = wanted.flatMap((each) => each ?? []);
  const cut = cuts.find((each) => each.part === bore);
  return cut === undefined
    ? ofFinished(context, { bore, fit, positions, wanted: sizes }, shelf)
    : toBeBored(context, cut, { bore, fit, positions, wanted: sizes }, shelf);
}

interface Asked {
  readonly bore: Part;
  readonly fit: Characteristic;
  readonly positions: readonly Position[];
  readonly wanted: readonly Wanted[];
}

const spreadOf = ({ engine }: PlanContext): Fraction | undefined => engine.planning.weightSpread?.amount;

function ofFinished(
  context: PlanContext,
  { bore, fit, positions, wanted }: Asked,
  shelf: ShelfPistons,
): PistonFit {
  const size = sizeOfPart(context, bore);
  const bores = positions.flatMap((position, index): readonly (Bore & { readonly position: Position })[] => {
    const row = context.state.rows.find((each) => each.characteristic === size && each.position === position);
    const grid = row?.routes[0]?.route.grid;
    // Where the piston bears: along the thrust axis.
    const room = grid && clearance(grid, gridOfOne(exactly(ZERO)), ['thrust']);
    const aim = wanted[index];
    if (room === undefined || aim === undefined) return [];
    const mean = room.mean.amount;
    const [below, above] = [subtract(mean, room.least.amount), subtract(room.greatest.amount, mean)];
    return [{ position, name: position.name, size: mean, below, above, wanted: aim }];
  });
  const none = { clearance: fit, places: [], isToBeBored: false };
  if (bores.length < positions.length || size === undefined) return { ...none, problem: 'not measured' };
  const { grade } = fittedSize(context.engine, undefined, size, positions[0]);
  const sized = grade === undefined ? [] : pistonsOfSize(shelf, grade);
  if (sized.length < bores.length) return { ...none, problem: 'too few' };
  const set = fitPistons(bores, sized, spreadOf(context));
  if (set === undefined) return { ...none, problem: 'nothing fits' };
  const places = bores.flatMap((each, index) => {
    const [piston, mean] = [set.pistons[index], set.clearances[index]];
    if (piston === undefined || mean === undefined) return [];
    const [least, greatest] = [subtract(mean, each.below), add(mean, each.above)];
    return [{ position: each.position, piston, size: each.size, least, greatest, wanted: each.wanted }];
  });
  return { ...none, places, problem: undefined };
}

/** Each bore is finished to its own piston, so that any of one weight will do; the first set that is large enough. */
function toBeBored(
  context: PlanContext,
  cut: Cut,
  { fit, positions, wanted }: Asked,
  shelf: ShelfPistons,
): PistonFit {
  const choice = cut.groups[0]?.deciding.choice;
  const none = { clearance: fit, places: [], isToBeBored: true };
  if (choice?.kind === 'beyond the last step') return { ...none, problem: 'to be renewed' };
  if (choice?.kind !== 'step') return { ...none, problem: 'nothing fits' };
  // What has run went with a bore that is cut away.
  const sized = pistonsOfSize(shelf, choice.step.grade).filter(({ ranIn }) => ranIn === undefined);
  const set = setsByWeight(sized, spreadOf(context)).find(({ length }) => length >= positions.length);
  if (set === undefined)
    return { ...none, problem: sized.length < positions.length ? 'too few' : 'nothing fits' };
  const places = positions.flatMap((position, index) => {
    const [piston, aim] = [set[index], wanted[index]];
    if (piston === undefined || aim === undefined) return [];
    const size = add(piston.diameter, aim.middle);
    return [{ position, piston, size, least: aim.middle, greatest: aim.middle, wanted: aim }];
  });
  return { ...none, places, problem: undefined };
}
