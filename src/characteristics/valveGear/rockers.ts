import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { clearanceOf, diameter } from '../sizes.ts';

const VALVE = familyOf('valve');

/** Rockers on their shafts. */
export const rockers: readonly Characteristic[] = [
  ...diameter({
    name: 'rocker',
    label: 'rocker',
    size: 'bore',
    of: 'rocker',
    description: 'Bore of a rocker, with its bush where it has one.',
    family: VALVE,
    usual: 'bore gauge',
    taperBy: 'range',
    source: 'TM 55-1905-220-14-6, valve gear',
  }),
  ...diameter({
    name: 'rocker_shaft',
    label: 'rocker shaft',
    size: 'diameter',
    of: 'rocker_shaft',
    description: 'Diameter of a rocker shaft where a rocker runs on it.',
    family: VALVE,
    usual: 'micrometer',
    taperBy: 'range',
    source: 'TM 55-1905-220-14-6, valve gear',
  }),
  clearanceOf(
    {
      id: 'rocker_clearance',
      label: 'rocker clearance',
      of: 'rocker',
      dependsOn: ['rocker_shaft'],
      description: 'Diametral clearance of a rocker on its shaft.',
      family: VALVE,
      formula: 'rocker bore − rocker shaft, or read directly',
      source: 'TM 55-1905-220-14-6, valve gear',
    },
    [
      {
        route: 'rocker bore − rocker shaft',
        inputs: ['rocker_bore', 'rocker_shaft_diameter'],
        compute: ([bore, shaft]) => bore && shaft && clearance(bore, shaft, []),
      },
    ],
    'other',
    [
      {
        unit: 'in',
        given: { rocker_bore: '0.8750', rocker_shaft_diameter: '0.8740' },
        least: '0.0010',
        greatest: '0.0010',
        source: 'TM 55-1905-220-14-6, valve gear: least clearance .0010',
      },
    ],
  ),
];
