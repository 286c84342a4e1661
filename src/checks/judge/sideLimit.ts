import type { Place } from '../../diagnostic/place.ts';
import type { BandName } from '../../documents/limits/bands.ts';
import type { Stage } from '../../documents/session/stage.ts';
import type { StatedTemperature } from '../../measurement/temperature.ts';
import { compare, type Fraction } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';

export type Side = 'min' | 'max';

export const SIDES: readonly Side[] = ['min', 'max'];

/** A limit worked out for one position: an amount in the base unit, rounded once. */
export interface SideLimit {
  readonly amount: Fraction;
  readonly written: string;
  readonly band: BandName;
  readonly place: Place;
  /** The temperature at which it is stated to hold. */
  readonly warm?: StatedTemperature | undefined;
  /** As it is stated, where it was moved to the temperature at which the value is judged. */
  readonly stated?: Fraction;
  /** What a formula was worked out in, and what the numbers in it are in. */
  readonly unit?: Unit;
}

export type SidedLimits = Readonly<Record<Side, SideLimit | undefined>>;

export type Bands = Readonly<Partial<Record<BandName, SidedLimits>>>;

const WEAR_FIRST: readonly BandName[] = ['wear', 'new'];
const NEW_FIRST: readonly BandName[] = ['new', 'wear'];

/** The band that decides comes first; each side falls back by itself. */
export function decidingOrder(stage: Stage, judgeBy: 'new' | 'wear' | undefined): readonly BandName[] {
  const isByWear = judgeBy === undefined ? stage === 'teardown' || stage === 'service' : judgeBy === 'wear';
  return isByWear ? WEAR_FIRST : NEW_FIRST;
}

export function decidingLimits(bands: Bands, order: readonly BandName[]): SidedLimits {
  const side = (which: Side): SideLimit | undefined => {
    const first = order.find((band) => bands[band]?.[which] !== undefined);
    return tighter(first && bands[first]?.[which], bands.last?.[which], which);
  };
  return { min: side('min'), max: side('max') };
}

/** Past its last size a part is out, whatever its grade allows. */
function tighter(a: SideLimit | undefined, b: SideLimit | undefined, side: Side): SideLimit | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  const isTighter = side === 'max' ? compare(b.amount, a.amount) < 0 : compare(b.amount, a.amount) > 0;
  return isTighter ? b : a;
}
