import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { clearanceOf, diameter } from '../sizes.ts';

const CYLINDER = familyOf('cylinder');

const ROUND = { stations: ['front', 'rear'], directions: ['vertical', 'sideways'] };

const PRESS = 'a press fit is below zero: what the pin is larger than its hole';

const HEAT =
  'A pressed pin goes in with a press or with heat: gloves and eye protection, and no more heat than the maker’s manual says.';

/** Piston pins, the holes that they turn or are pressed in, and the bush of the small end. */
export const pistonPins: readonly Characteristic[] = [
  ...diameter({
    name: 'piston_pin',
    label: 'piston pin',
    size: 'diameter',
    of: 'piston_pin',
    usualGrid: ROUND,
    description: 'Diameter of a piston pin, where it runs in the piston and in the rod.',
    family: CYLINDER,
    usual: 'micrometer',
    taperBy: 'range',
    dimension: 'size',
    source: 'TM 5-3895-347-14P',
  }),
  ...diameter({
    name: 'piston_pin_bore',
    label: 'piston pin bore',
    of: 'piston',
    usualGrid: ROUND,
    description: 'Hole for the pin in a piston, in both bosses.',
    family: CYLINDER,
    usual: 'bore gauge',
    taperBy: 'range',
    source: 'TM 9-2815-225-34&P, app. F',
  }),
  clearanceOf(
    {
      id: 'piston_pin_clearance',
      label: 'pin clearance in piston',
      of: 'piston_pin',
      dependsOn: ['piston'],
      description: `Diametral clearance of a pin in its piston, both at one temperature; ${PRESS}.`,
      family: CYLINDER,
      mayBePressed: true,
      formula: 'piston pin bore − pin, or read directly',
      caution: HEAT,
      source: 'TM 5-3825-225-14&P, rods and pistons (prints it as a transition fit)',
    },
    [
      {
        route: 'piston pin bore − pin',
        inputs: ['piston_pin_bore', 'piston_pin_diameter'],
        compute: ([bore, pin]) => bore && pin && clearance(bore, pin),
      },
    ],
    'other',
    [
      {
        unit: 'in',
        given: { piston_pin_bore: '1.06255', piston_pin_diameter: '1.0627' },
        least: '-0.00015',
        greatest: '-0.00015',
        source: 'computed from the sizes of TM 5-3825-225-14&P: pin bore 1.06255, pin 1.0627',
      },
    ],
  ),
  ...diameter({
    name: 'small_end',
    label: 'small end',
    size: 'bore',
    of: 'rod',
    dependsOn: ['small_end_bush'],
    usualGrid: ROUND,
    description: 'Hole for the pin in the small end of a rod, its bush finished in place.',
    family: CYLINDER,
    usual: 'bore gauge',
    taperBy: 'range',
    source: 'TM 5-6115-400-35, p. 10: bushing, finished',
  }),
  clearanceOf(
    {
      id: 'small_end_clearance',
      label: 'pin clearance in small end',
      of: 'piston_pin',
      dependsOn: ['rod', 'small_end_bush'],
      description: `Diametral clearance of a pin in its rod; ${PRESS}.`,
      family: CYLINDER,
      mayBePressed: true,
      formula: 'small end bore − pin, or read directly',
      caution: HEAT,
      source: 'TM 5-3825-225-14&P, rods and pistons',
    },
    [
      {
        route: 'small end bore − pin',
        inputs: ['small_end_bore', 'piston_pin_diameter'],
        compute: ([bore, pin]) => bore && pin && clearance(bore, pin),
      },
    ],
    'other',
    [
      {
        unit: 'in',
        given: { small_end_bore: '1.06315', piston_pin_diameter: '1.0627' },
        least: '0.00045',
        greatest: '0.00045',
        source: 'TM 5-3825-225-14&P: bush 1.06315 to 1.0632, pin 1.0625 to 1.0627, .00045 to .0007 in',
      },
    ],
  ),
  ...diameter({
    name: 'small_end_housing',
    label: 'small end housing',
    size: 'bore',
    of: 'rod',
    usualGrid: ROUND,
    description: 'Hole in the small end of a rod that its bush is pressed into, the bush out.',
    family: CYLINDER,
    usual: 'bore gauge',
    taperBy: 'range',
    source: 'common practice, no source',
  }),
  ...diameter({
    name: 'small_end_bush',
    label: 'small end bush',
    size: 'diameter',
    of: 'small_end_bush',
    usualGrid: ROUND,
    description: 'Diameter of a small-end bush outside, before it is pressed in.',
    family: CYLINDER,
    usual: 'micrometer',
    taperBy: 'range',
    source: 'common practice, no source',
  }),
  clearanceOf(
    {
      id: 'small_end_bush_fit',
      label: 'small end bush fit',
      of: 'small_end_bush',
      dependsOn: ['rod'],
      description: 'Fit of a bush in the small end before it is pressed in; a press fit is below zero.',
      family: CYLINDER,
      mayBePressed: true,
      formula: 'small end housing bore − bush diameter',
      caution:
        'Support the small end squarely under the press and stand out of its line: bushes break and fly.',
      source: 'common practice, no source',
    },
    [
      {
        route: 'small end housing − bush',
        inputs: ['small_end_housing_bore', 'small_end_bush_diameter'],
        compute: ([housing, bush]) => housing && bush && clearance(housing, bush),
      },
    ],
    'other',
    [
      {
        unit: 'in',
        given: { small_end_housing_bore: '2.1880', small_end_bush_diameter: '2.1905' },
        least: '-0.0025',
        greatest: '-0.0025',
        source: 'worked by hand, invented readings',
      },
    ],
  ),
];
