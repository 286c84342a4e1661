import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { read, readSize } from '../readFigure.ts';
import { clearanceOf, diameter } from '../sizes.ts';

const VALVE = familyOf('valve');

/** Lifters in their bores, and the pushrods on them. */
export const lifters: readonly Characteristic[] = [
  ...diameter({
    name: 'lifter',
    label: 'lifter',
    size: 'diameter',
    of: 'lifter',
    description: 'Diameter of a lifter where it runs in its bore.',
    family: VALVE,
    usual: 'micrometer',
    taperBy: 'range',
    dimension: 'size',
    source: 'TM 5-3810-206-35, p. 3-73',
  }),
  ...diameter({
    name: 'lifter_bore',
    label: 'lifter bore',
    of: 'lifter_bore',
    description: 'Bore in the block or the head that a lifter runs in.',
    family: VALVE,
    usual: 'bore gauge',
    taperBy: 'range',
    dimension: 'size',
    source: 'TM 5-3810-206-35, p. 3-73',
  }),
  clearanceOf(
    {
      id: 'lifter_clearance',
      label: 'lifter clearance',
      of: 'lifter',
      dependsOn: ['lifter_bore'],
      description: 'Diametral clearance of a lifter in its bore.',
      family: VALVE,
      formula: 'lifter bore − lifter, or read directly',
      source: 'TM 5-3810-206-35, p. 3-73',
    },
    [
      {
        route: 'lifter bore − lifter',
        inputs: ['lifter_bore', 'lifter_diameter'],
        compute: ([bore, lifter]) => bore && lifter && clearance(bore, lifter, []),
      },
    ],
    'feeler gauge',
    [
      {
        unit: 'in',
        given: { lifter_bore: '1.3125', lifter_diameter: '1.3110' },
        least: '0.0015',
        greatest: '0.0015',
        source: 'computed from the sizes of TM 5-3810-206-35, p. 3-73',
      },
    ],
  ),
  readSize({
    id: 'pushrod_length',
    label: 'pushrod length',
    of: 'pushrod',
    description: 'Length of a pushrod over its ends.',
    family: VALVE,
    usual: 'caliper',
    words: { above: 'long', below: 'short' },
    source: 'common practice, no source',
  }),
  read({
    id: 'pushrod_runout',
    isNeverBelowZero: true,
    label: 'pushrod runout',
    of: 'pushrod',
    description: 'Full indicator reading at the middle of a pushrod that is rolled on its ends.',
    family: VALVE,
    usual: 'dial indicator',
    words: { above: 'bent', below: 'straight' },
    source: 'TM 10-3930-653-14&P, valve gear: .05 mm',
  }),
];
