import type { PlanContext } from '../work/context.ts';
import type { Cut } from '../work/cut.ts';
import { bySteps } from '../work/cutSteps.ts';
import { pistonsToBoreFor } from './boresToFinish.ts';
import { pistonsDue } from './due/pistonsDue.ts';
import { pistonsOfFinished } from './finishedBores.ts';
import type { Asked, AskedBore, PistonFit } from './pistonChoice.ts';
import type { ShelfPistons } from './shelfPistons.ts';
import { wantedAt } from './wanted.ts';

/** The first part that is bought for a bore and of which pistons are on the shelf. */
export function pistonFit(
  context: PlanContext,
  cuts: readonly Cut[],
  shelf: ShelfPistons,
): PistonFit | undefined {
  const { registry } = context;
  const part = registry.parts.find('piston');
  const bore = part && registry.parts.find(part.sized?.fits ?? '');
  const fit = registry.all.find(({ of, figure }) => of === part?.id && figure === 'clearance');
  if (part === undefined || bore === undefined || fit === undefined || shelf.pistons.length === 0)
    return undefined;
  const cut = cuts.find((each) => each.part === bore);
  const { past, left } = cut === undefined ? NO_STEPS : bySteps(cut);
  const { ready, toBeRenewed } = pistonsDue(context, part, bore, past);
  const places = ready.flatMap((position): readonly AskedBore[] => {
    const aim = wantedAt(context, fit, position);
    return aim === undefined ? [] : [{ position, aim }];
  });
  const asked: Asked = { bore, fit, places, toBeRenewed };
  const none = { clearance: fit, places: [], inPlace: [], isToBeBored: false, toBeRenewed };
  if (places.length < ready.length) return { ...none, problem: { kind: 'no limits' } };
  if (ready.length === 0) return { ...none, problem: undefined };
  return left === undefined
    ? pistonsOfFinished(context, asked, shelf)
    : pistonsToBoreFor(context, left, asked, shelf);
}

const NO_STEPS = { past: undefined, left: undefined };
