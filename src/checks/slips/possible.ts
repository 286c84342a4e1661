import { isNeverBelowZero } from '../../characteristics/belowZero.ts';
import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';
import type { SessionView } from '../judge/row.ts';
import { allowsBelowZero, type Fit, fitsOf, placesOfFit } from './fits.ts';
import type { Expectations } from './plausible.ts';
import { isIn } from './plausibleSizes.ts';

/** Whether a part can be so large: above zero, and smaller than the bore or larger than the shaft that was read beside it. */
export function couldBe(
  characteristic: Characteristic,
  position: Position,
  amount: number,
  view: SessionView,
  expectations: Expectations,
): boolean {
  if (amount < 0 && isNeverBelowZero(characteristic)) return false;
  if (amount === 0 && characteristic.figure === 'size') return false;
  return fitsOf(view.registry)
    .filter(({ outer, inner }) => outer === characteristic || inner === characteristic)
    .every((fit) => fitsBeside(fit, characteristic, position, amount, view, expectations));
}

function fitsBeside(
  fit: Fit,
  characteristic: Characteristic,
  position: Position,
  amount: number,
  view: SessionView,
  expectations: Expectations,
): boolean {
  const isOuter = fit.outer === characteristic;
  const mate = isOuter ? fit.inner : fit.outer;
  const around = relate(view.engine.document.layout, position, fit.clearance.family) ?? [];
  return around.every((at) => {
    const places = placesOfFit(fit, at, view);
    const its = places && (isOuter ? places.inner : places.outer);
    const read = its && expectations.medians(mate).get(its);
    if (its === undefined || read === undefined || isPressed(fit, at, expectations)) return true;
    // A mate that is itself no honest size proves nothing.
    if (!expectations.ranges(mate, its).some((range) => isIn(read, range))) return true;
    return isOuter ? amount > read : amount < read;
  });
}

export const isPressed = ({ clearance }: Fit, at: Position, expectations: Expectations): boolean =>
  expectations.rows(clearance, at).some(({ limits }) => allowsBelowZero(clearance, limits.bands));
