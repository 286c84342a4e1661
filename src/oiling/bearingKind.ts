import type { PlainSize } from '../documents/engine/plainSizes.ts';
import type { LoadedBearings } from '../documents/engine/running/duty.ts';

/** Bearings of one kind that run in oil, and where an engine states what a film depends on. */
export interface BearingKind {
  /** Their clearance. */
  readonly measure: string;
  /** Their journal's diameter, by its characteristic and nominal size. */
  readonly diameter: string;
  readonly length: PlainSize;
  readonly load: LoadedBearings;
  /** Turns of the journal in its bearing for one of the crankshaft. */
  readonly turns: number;
  readonly plural: string;
}

export const BEARING_KINDS: readonly BearingKind[] = [
  {
    measure: 'main_bearing_clearance',
    diameter: 'main_journal_diameter',
    length: 'main_bearing_length',
    load: 'mains',
    turns: 1,
    plural: 'main bearings',
  },
  {
    measure: 'rod_bearing_clearance',
    diameter: 'crankpin_diameter',
    length: 'rod_bearing_length',
    load: 'rods',
    turns: 1,
    plural: 'rod bearings',
  },
  {
    // The camshaft of a four-stroke engine turns at half the speed of its crankshaft.
    measure: 'cam_bearing_clearance',
    diameter: 'cam_journal_diameter',
    length: 'cam_bearing_length',
    load: 'camshaft',
    turns: 0.5,
    plural: 'cam bearings',
  },
];
