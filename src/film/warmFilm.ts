import type { Bearing, Duty, Film } from './bearing.ts';
import { type BelievedFilm, believedFilm, likelyFilm } from './believed.ts';

/** A bearing's duty where the oil warms up in it. */
export interface WarmDuty extends Omit<Duty, 'viscosity'> {
  /** Dynamic viscosity in Pa s at a temperature in °C. */
  readonly viscosityAt: (temperature: number) => number;
  /** Of the oil that comes in, in °C. */
  readonly inlet: number;
}

export interface WarmFilm extends BelievedFilm {
  /** How much warmer oil leaves than it came in, and the mean that its viscosity is taken at; °C. */
  readonly rise: number;
  readonly mean: number;
  readonly viscosity: number;
}

/**
 * What a cubic metre of oil takes up a degree, in J: with it friction and flow give the published ΔT in °C =
 * 8.30 P (rf/c) / ((Q/rcNl) (1 − Qs/2Q)), P in MPa (Shigley, chapter 12).
 */
export const HEAT_CAPACITY = (4 * Math.PI * 1e6) / 8.3;

/** All heat goes with the oil; what leaves at the sides has warmed up by half. */
export const temperatureRise = ({ power, inflow, sideFlow }: Film): number =>
  power / (HEAT_CAPACITY * (inflow - sideFlow / 2));

/** Hotter than any oil: no film is looked for beyond it. */
const MOST_RISE = 400;

/** The film whose own heat makes the viscosity that it has: as thin as it is warm at the mean of in and out. */
export function warmFilm(bearing: Bearing, { revolutions, load, viscosityAt, inlet }: WarmDuty): WarmFilm {
  const warmed = (rise: number): Duty => ({ revolutions, load, viscosity: viscosityAt(inlet + rise / 2) });
  let [low, high] = [0, MOST_RISE];
  // The warmer the oil the less it rubs: the rise that is assumed and the one that follows cross once.
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (temperatureRise(likelyFilm(bearing, warmed(middle))) > middle) low = middle;
    else high = middle;
  }
  const rise = (low + high) / 2;
  const duty = warmed(rise);
  return { ...believedFilm(bearing, duty), rise, mean: inlet + rise / 2, viscosity: duty.viscosity };
}
