import {
  type Bearing,
  type Duty,
  type Film,
  flowUnit,
  frictionPower,
  lengthRatio,
  sommerfeldNumber,
} from './bearing.ts';
import { chartFor } from './chart.ts';

/** By the charts of Raimondi and Boyd; undefined for a bearing that is shorter than they reach. */
export function finiteBearing(bearing: Bearing, duty: Duty): Film | undefined {
  const chart = chartFor(lengthRatio(bearing));
  if (chart === undefined) return undefined;
  const sommerfeld = sommerfeldNumber(bearing, duty);
  const row = chart.at(sommerfeld);
  // f = (friction) c/r, and the torque is f W r.
  const torque = (row.friction * bearing.clearance * duty.load) / 2;
  const inflow = row.inflow * flowUnit(bearing, duty);
  return {
    sommerfeld,
    eccentricity: 1 - row.thickness,
    thickness: (row.thickness * bearing.clearance) / 2,
    attitude: row.attitude,
    torque,
    power: frictionPower(torque, duty),
    inflow,
    sideFlow: inflow * row.sideShare,
  };
}
