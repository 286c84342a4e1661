import { withUnit } from '../documents/amount.ts';
import type { Engine } from '../documents/assemble.ts';
import { ASSUMED_ROD_RATIO } from './assumptions.ts';
import type { BearingKind } from './bearingKind.ts';
import { inKilograms, inMetres, inNewtons, inPascals, inRevolutionsASecond } from './inSi.ts';

/** The load on one bearing, in newtons, and where it comes from. */
export interface BearingLoad {
  readonly newtons: number;
  readonly from: 'stated' | 'gas' | 'inertia';
  readonly why: string;
}

/** As stated, else of a crankpin; undefined where nothing gives it. */
export function bearingLoad({ load }: BearingKind, { document }: Engine): BearingLoad | undefined {
  const stated = document.duty.loads[load];
  if (stated !== undefined)
    return { newtons: inNewtons(stated), from: 'stated', why: `${withUnit(stated)}, as stated` };
  if (load === 'camshaft') return undefined;
  const onPin = loadOfPin(document);
  if (onPin === undefined || load === 'rods') return onPin;
  // Its share of both neighbours, never both at once: the whole of one is more than any main of a usual crank carries.
  return { ...onPin, why: `${onPin.why}, the whole of one crankpin` };
}

/** The greater of what burning presses and what the pistons pull, as if it lasted. */
function loadOfPin(document: Engine['document']): BearingLoad | undefined {
  const [gas, inertia] = [gasLoad(document), inertiaLoad(document)];
  if (gas === undefined) return inertia;
  return inertia === undefined || inertia.newtons <= gas.newtons ? gas : inertia;
}

function gasLoad({ duty, sizes }: Engine['document']): BearingLoad | undefined {
  const bore = sizes.get('bore');
  if (duty.cylinderPressure === undefined || bore === undefined) return undefined;
  return {
    newtons: (inPascals(duty.cylinderPressure) * Math.PI * inMetres(bore.amount) ** 2) / 4,
    from: 'gas',
    why: `${withUnit(duty.cylinderPressure)} on the bore, as if it lasted`,
  };
}

/** m r ω² (1 + r/l), of a piston at its top between exhaust and intake, when nothing presses against it. */
function inertiaLoad({ duty, sizes }: Engine['document']): BearingLoad | undefined {
  const [stroke, rod] = [sizes.get('stroke'), sizes.get('rod_centre_distance')];
  if (duty.reciprocatingMass === undefined || duty.speed === undefined || stroke === undefined)
    return undefined;
  const throwLength = inMetres(stroke.amount) / 2;
  const ratio = rod === undefined ? ASSUMED_ROD_RATIO : throwLength / inMetres(rod.amount);
  const turning = 2 * Math.PI * inRevolutionsASecond(duty.speed);
  return {
    newtons: inKilograms(duty.reciprocatingMass) * throwLength * turning ** 2 * (1 + ratio),
    from: 'inertia',
    why: `${withUnit(duty.reciprocatingMass)} going up and down at ${withUnit(duty.speed)}`,
  };
}
