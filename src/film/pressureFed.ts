import type { Bearing } from './bearing.ts';

/** How oil is fed: its gauge pressure in Pa, and the viscosity in Pa s with which it flows. */
export interface Feed {
  readonly pressure: number;
  readonly viscosity: number;
}

/**
 * Oil that its pressure drives out of a bearing with a groove all round its middle, both lands together:
 * π p r c³ (1 + 1.5 ε²) / (3 μ l'), l' the length of one land (Shigley, chapter 12). The cube of the clearance rules it.
 */
export const pressureFedFlow = (
  { diameter, clearance }: Bearing,
  land: number,
  eccentricity: number,
  { pressure, viscosity }: Feed,
): number =>
  (Math.PI * pressure * (diameter / 2) * (clearance / 2) ** 3 * (1 + 1.5 * eccentricity ** 2)) /
  (3 * viscosity * land);
