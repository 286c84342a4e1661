import { NO_OFFERS, type NotOffered, type OfferedParts } from '../../documents/parts/offeredPart.ts';
import type { PlanContext } from '../work/context.ts';
import { cutsOf } from '../work/cut.ts';
import { type GasketFit, gasketFit, type WasherFit, washerFit } from './otherFits.ts';
import { type PistonFit, pistonFit } from './pistonFit.ts';
import { shelfPistons } from './shelfPistons.ts';
import { type ShellFit, shellFits } from './shellFit.ts';
import { type ThicknessFit, thicknessFits } from './thicknessFits.ts';
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
}

export function fitsOf(stands: PlanContext, offers: OfferedParts = NO_OFFERS): Fits {
  const pistons = shelfPistons(stands, offers);
  const whole = wholeFits(stands, offers, pistons);
  const { context } = whole;
  const cuts = cutsOf(context);
  return {
    wholes: whole.fits,
    shells: shellFits(context, cuts),
    pistons: pistonFit(context, cuts, pistons),
    washers: washerFit(context),
    gasket: gasketFit(context),
    thicknesses: thicknessFits(context),
    notOffered: [...offers.notOffered, ...pistons.notOffered, ...whole.notOffered],
  };
}

/** Bores are finished to pistons that are in hand, whatever crankshaft goes in. */
export const pistonsFor = (context: PlanContext, offers: OfferedParts): PistonFit | undefined =>
  pistonFit(context, cutsOf(context), shelfPistons(context, offers));

/** Whether something that was to be chosen has nothing on the shelf. */
export const isShort = ({ shells, pistons, washers, gasket, thicknesses }: Fits): boolean =>
  shells.some(({ isTooFew, places }) => isTooFew || places.some(({ chosen }) => chosen === undefined)) ||
  pistons?.problem !== undefined ||
  (washers !== undefined && washers.chosen === undefined) ||
  (gasket !== undefined && gasket.gasket === undefined) ||
  thicknesses.some((each) => each.isShort);
