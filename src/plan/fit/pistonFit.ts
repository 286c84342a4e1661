import type { PlanContext } from '../work/context.ts';
import type { Cut } from '../work/cut.ts';
import { isOfRenewedWhole, isRenewedAlone } from '../work/renewal/renewed.ts';
import { pistonsToBoreFor } from './boresToFinish.ts';
import { pistonsOfFinished } from './finishedBores.ts';
import type { AskedBore, PistonFit } from './pistonChoice.ts';
import type { ShelfPistons } from './shelfPistons.ts';
import { wantedAt } from './wanted.ts';

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
  if (places.length < positions.length) return { ...none, problem: { kind: 'no limits' } };
  if (
    isOfRenewedWhole(context, bore) ||
    positions.some((position) => isRenewedAlone(context, bore, position))
  )
    return { ...none, problem: { kind: 'to be renewed' } };
  const cut = cuts.find((each) => each.part === bore);
  return cut === undefined
    ? pistonsOfFinished(context, { bore, fit, places }, shelf)
    : pistonsToBoreFor(context, cut, { bore, fit, places }, shelf);
}
