import { add, compare, type Fraction, fraction, ZERO } from '../../quantity/fraction.ts';
import { toBase, unitNamed } from '../../quantity/units.ts';
import type { Thread } from './threadForm.ts';

/** How the nut is loaded: along the bolt, or only to keep a bolt in shear in its place. */
export type NutType = 'tension' | 'shear';

/** Torques in newton metres, exact. */
export interface AircraftTorque {
  readonly recommended: { readonly least: Fraction; readonly greatest: Fraction };
  readonly maximum: Fraction;
}

export type AircraftVerdict = 'below recommended' | 'recommended' | 'above recommended' | 'above maximum';

const LBF_IN = unitNamed('lbf in');
const torque = (lbfIn: number): Fraction => toBase(fraction(lbfIn), LBF_IN);
const entry = (least: number, greatest: number, maximum: number): AircraftTorque => ({
  recommended: { least: torque(least), greatest: torque(greatest) },
  maximum: torque(maximum),
});

/** Size and pitch; tension: least, greatest, maximum; shear: least, greatest, maximum; all in lbf in. */
type Row = readonly [string, readonly [number, number, number], readonly [number, number, number]];

/** FAA AC 43.13-1B, table 7-1: oil-free cadmium plated steel bolts and nuts. */
const ROWS: readonly Row[] = [
  ['8-36', [12, 15, 20], [7, 9, 12]],
  ['10-32', [20, 25, 40], [12, 15, 25]],
  ['1/4-28', [50, 70, 100], [30, 40, 60]],
  ['5/16-24', [100, 140, 225], [60, 85, 140]],
  ['3/8-24', [160, 190, 390], [95, 110, 240]],
  ['7/16-20', [450, 500, 840], [270, 300, 500]],
  ['1/2-20', [480, 690, 1100], [290, 410, 660]],
  ['9/16-18', [800, 1000, 1600], [480, 600, 960]],
  ['5/8-18', [1100, 1300, 2400], [600, 780, 1400]],
  ['3/4-16', [2300, 2500, 5000], [1300, 1500, 3000]],
  ['7/8-14', [2500, 3000, 7000], [1500, 1800, 4200]],
  ['1-14', [3700, 5500, 10000], [2200, 3300, 6000]],
  ['8-32', [12, 15, 20], [7, 9, 12]],
  ['10-24', [20, 25, 35], [12, 15, 21]],
  ['1/4-20', [40, 50, 75], [25, 30, 45]],
  ['5/16-18', [80, 90, 160], [48, 55, 100]],
  ['3/8-16', [160, 185, 275], [95, 100, 170]],
  ['7/16-14', [235, 255, 475], [140, 155, 280]],
  ['1/2-13', [400, 480, 880], [240, 290, 520]],
  ['9/16-12', [500, 700, 1100], [300, 420, 650]],
  ['5/8-11', [700, 900, 1500], [420, 540, 900]],
  ['3/4-10', [1150, 1600, 2500], [700, 950, 1500]],
  ['7/8-9', [2200, 3000, 4600], [1300, 1800, 2700]],
];

const byThread = new Map(
  ROWS.map(([size, tension, shear]) => [size, { tension: entry(...tension), shear: entry(...shear) }]),
);

export const AIRCRAFT_THREADS: readonly string[] = ROWS.map(([size]) => size);

/** The table's row for a thread, or undefined where it has none. */
export const aircraftTorqueOf = (thread: Thread, nut: NutType): AircraftTorque | undefined =>
  byThread.get(thread.designation.split(' ')[0] ?? '')?.[nut];

/**
 * Where a torque in newton metres lies in the table. Run-on torque is first taken off, since what turns a
 * locknut comes on top of the table's figures (paragraph 7-40). Exactly on a figure is inside it.
 */
export function judgeAircraftTorque(
  reached: Fraction,
  row: AircraftTorque,
  runOn: Fraction = ZERO,
): AircraftVerdict {
  const isAbove = (figure: Fraction): boolean => compare(reached, add(figure, runOn)) > 0;
  if (isAbove(row.maximum)) return 'above maximum';
  if (isAbove(row.recommended.greatest)) return 'above recommended';
  return compare(reached, add(row.recommended.least, runOn)) < 0 ? 'below recommended' : 'recommended';
}
