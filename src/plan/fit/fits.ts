import { NO_OFFERS, type NotOffered, type OfferedParts } from '../../documents/parts/offeredPart.ts';
import type { Part } from '../../layout/part.ts';
import { awaitedBy } from '../order/awaited.ts';
import type { PlanContext } from '../work/context.ts';
import { type Cut, cutsOf } from '../work/cut.ts';
import { type GasketFit, gasketFit, type WasherFit, washerFit } from './otherFits.ts';
import type { PistonFit } from './pistonChoice.ts';
import { pistonFit } from './pistonFit.ts';
import { shelfPistons } from './shelfPistons.ts';
import { type ShellFit, shellFits } from './shellFit.ts';
import { type ThicknessFit, thicknessFits } from './thickness/thicknessFits.ts';
import { type WholeFit, wholeFits } from './wholeParts.ts';

/** All that is chosen from stock for an engine, and from parts with documents of their own. */
export interface Fits {
  /** Of a whole crankshaft that lies on the shelf: all else is chosen as if it were fitted. */
  readonly wholes: readonly WholeFit[];
  readonly shells: readonly ShellFit[];
  readonly pistons: PistonFit | undefined;
  readonly washers: WasherFit | undefined;
  readonly gasket: GasketFit | undefined;
  readonly thicknesses: readonly ThicknessFit[];
  readonly notOffered: readonly NotOffered[];
  /** Shells that ground journals ask for, and of which the shelf has none. */
  readonly notInStock: readonly Part[];
}

export function fitsOf(stands: PlanContext, offers: OfferedParts = NO_OFFERS): Fits {
  const pistons = shelfPistons(stands, offers);
  const whole = wholeFits(stands, offers, pistons);
  const { context } = whole;
  const cuts = cutsOf(context);
  const shells = shellFits(context, cuts);
  return {
    wholes: whole.fits,
    shells,
    pistons: pistonFit(context, cuts, pistons),
    washers: washerFit(context),
    gasket: gasketFit(context),
    thicknesses: thicknessFits(context),
    notInStock: shellsAsked(context, cuts).filter((each) => !shells.some(({ part }) => part === each)),
    notOffered: [...offers.notOffered, ...pistons.notOffered, ...whole.notOffered],
  };
}

/** Those of journals that are ground, or were and wait for them. */
const shellsAsked = (context: PlanContext, cuts: readonly Cut[]): readonly Part[] => {
  const ground = cuts.filter(({ urgency }) => urgency === 'must').map(({ part }) => part.id);
  const awaited = awaitedBy(context).map(({ mate }) => mate);
  return context.registry.parts.all.filter(
    (part) =>
      part.sized?.liesIn !== undefined && (awaited.includes(part) || ground.includes(part.sized.fits ?? '')),
  );
};

/** Bores are finished to pistons that are in hand, whatever crankshaft goes in. */
export const pistonsFor = (context: PlanContext, offers: OfferedParts): PistonFit | undefined =>
  pistonFit(context, cutsOf(context), shelfPistons(context, offers));

/** Whether something that was to be chosen has nothing on the shelf. */
export const isShort = ({ shells, pistons, washers, gasket, thicknesses }: Fits): boolean =>
  shells.some(({ places }) => places.some(({ chosen }) => chosen === undefined)) ||
  pistons?.problem !== undefined ||
  (pistons?.toBeRenewed ?? []).length > 0 ||
  (washers !== undefined && washers.inPlace === undefined && washers.chosen === undefined) ||
  (gasket !== undefined &&
    gasket.inPlace === undefined &&
    (gasket.gasket === undefined || gasket.free < gasket.count)) ||
  thicknesses.some(({ places }) => places.some(({ code }) => code === undefined));
