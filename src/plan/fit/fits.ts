import type { PlanContext } from '../work/context.ts';
import { cutsOf } from '../work/cut.ts';
import { type GasketFit, gasketFit, type WasherFit, washerFit } from './otherFits.ts';
import { type PistonFit, pistonFit } from './pistonFit.ts';
import { type ShellFit, shellFits } from './shellFit.ts';
import { type ThicknessFit, thicknessFits } from './thicknessFits.ts';

/** All that is chosen from stock for an engine. */
export interface Fits {
  readonly shells: readonly ShellFit[];
  readonly pistons: PistonFit | undefined;
  readonly washers: WasherFit | undefined;
  readonly gasket: GasketFit | undefined;
  readonly thicknesses: readonly ThicknessFit[];
}

export function fitsOf(context: PlanContext): Fits {
  const cuts = cutsOf(context);
  return {
    shells: shellFits(context, cuts),
    pistons: pistonFit(context, cuts),
    washers: washerFit(context),
    gasket: gasketFit(context),
    thicknesses: thicknessFits(context),
  };
}

/** Whether something that was to be chosen has nothing on the shelf. */
export const isShort = ({ shells, pistons, washers, gasket, thicknesses }: Fits): boolean =>
  shells.some(({ isTooFew, places }) => isTooFew || places.some(({ chosen }) => chosen === undefined)) ||
  pistons?.problem !== undefined ||
  (washers !== undefined && washers.chosen === undefined) ||
  (gasket !== undefined && gasket.gasket === undefined) ||
  thicknesses.some((each) => each.isShort);
