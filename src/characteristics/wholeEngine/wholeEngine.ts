import type { Characteristic } from '../characteristic.ts';
import { balance } from './balance.ts';
import { cylinderTests } from './cylinderTests.ts';
import { oilPump } from './oilPump.ts';
import { pressures } from './pressures.ts';
import { shopTests } from './shopTests.ts';

/** What is weighed and tested of the parts, and what the engine shows when it is together. */
export const wholeEngine: readonly Characteristic[] = [
  ...oilPump,
  ...balance,
  ...shopTests,
  ...pressures,
  ...cylinderTests,
];
