import type { Characteristic } from '../characteristic.ts';
import { camshaft } from './camshaft.ts';
import { camEvents } from './events.ts';
import { lifters } from './lifters.ts';
import { lobes } from './lobes.ts';
import { valveMotion } from './motion.ts';
import { rockers } from './rockers.ts';
import { valveSeats } from './seats.ts';
import { timingDrive } from './timingDrive.ts';
import { valveSprings } from './valveSprings.ts';
import { valves } from './valves.ts';

/** From the seats to the cam, in the order in which a head is gone over. */
export const valveGear: readonly Characteristic[] = [
  ...valves,
  ...valveSeats,
  ...valveSprings,
  ...lifters,
  ...rockers,
  ...camshaft,
  ...lobes,
  ...timingDrive,
  ...valveMotion,
  ...camEvents,
];
