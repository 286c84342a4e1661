import {
  type Bearing,
  type Duty,
  type Film,
  flowUnit,
  frictionPower,
  lengthRatio,
  petroffTorque,
  sommerfeldNumber,
} from './bearing.ts';

/**
 * By the theory of a bearing so short that oil flows to its sides alone (DuBois and Ocvirk 1953, formulas from memory):
 * S (l/d)² = (1 − ε²)² / (π ε √(π² (1 − ε²) + 16 ε²)), side flow 2π ε in units of r c N l, friction Petroff's over √(1 − ε²).
 */
export function shortBearing(bearing: Bearing, duty: Duty): Film {
  const sommerfeld = sommerfeldNumber(bearing, duty);
  const eccentricity = eccentricityAt(sommerfeld * lengthRatio(bearing) ** 2);
  const roundness = Math.sqrt(1 - eccentricity ** 2);
  const torque = petroffTorque(bearing, duty) / roundness;
  const unit = flowUnit(bearing, duty);
  return {
    sommerfeld,
    eccentricity,
    thickness: ((1 - eccentricity) * bearing.clearance) / 2,
    attitude: (Math.atan((Math.PI * roundness) / (4 * eccentricity)) * 180) / Math.PI,
    torque,
    power: frictionPower(torque, duty),
    inflow: Math.PI * (1 + eccentricity) * unit,
    sideFlow: 2 * Math.PI * eccentricity * unit,
  };
}

/** S (l/d)², which falls from without end to nothing while the eccentricity grows from 0 to 1. */
export const shortSommerfeld = (eccentricity: number): number =>
  (1 - eccentricity ** 2) ** 2 /
  (Math.PI * eccentricity * Math.sqrt(Math.PI ** 2 * (1 - eccentricity ** 2) + 16 * eccentricity ** 2));

function eccentricityAt(wanted: number): number {
  let [low, high] = [0, 1];
  // Fifty halvings are as fine as a double.
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (shortSommerfeld(middle) > wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
