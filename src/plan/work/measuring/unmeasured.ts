import type { Characteristic } from '../../../characteristics/characteristic.ts';
import type { Position } from '../../../layout/position.ts';

/** A figure that has limits and no value. */
export interface Unmeasured {
  readonly characteristic: Characteristic;
  /** Where it had one since the engine was opened, before work ended it; none where it never had. */
  readonly ended: readonly Position[];
  /** Of a crack test that no document speaks of the work that asks for it: `crankpins machined`. */
  readonly askedBy?: string;
}
