import { familyOf } from '../layout/family.ts';
import type { Characteristic } from './characteristic.ts';
import { pistonClearance } from './clearance.ts';
import { clearanceOf, diameter } from './sizes.ts';

export const cylinders: readonly Characteristic[] = [
  ...diameter({
    name: 'cylinder',
    label: 'cylinder',
    size: 'bore',
    of: 'cylinder',
    nominal: 'bore',
    usualGrid: { stations: ['top', 'middle', 'bottom'], directions: ['thrust', 'axial'] },
    description: 'Diameter of a cylinder, at stations down the bore, along and across the crankshaft.',
    family: familyOf('cylinder'),
    usual: 'bore gauge',
    taperBy: 'range',
    dimension: 'size',
    source: 'TM 5-3895-370-14&P, p. 5-272',
  }),
  ...diameter({
    name: 'piston',
    label: 'piston',
    size: 'diameter',
    of: 'piston',
    nominal: 'bore',
    description: "Diameter of a piston at its gauge height, as the maker's manual gives it.",
    family: familyOf('cylinder'),
    usual: 'micrometer',
    taperBy: 'ends',
    dimension: 'size',
    source: 'TM 5-3895-347-14P: skirt',
  }),
  clearanceOf(
    {
      id: 'piston_clearance',
      label: 'piston clearance',
      of: 'piston',
      dependsOn: ['cylinder'],
      grid: 'piston',
      description:
        'Diametral clearance of a piston in its cylinder, in the thrust direction where it is named.',
      family: familyOf('cylinder'),
      formula: 'cylinder bore − piston, or read directly',
      source: 'TM 55-1905-219-14-4 and TM 55-1905-220-14-4',
    },
    [
      {
        route: 'cylinder bore − piston',
        inputs: ['cylinder_bore', 'piston_diameter'],
        compute: ([bore, piston]) => bore && piston && pistonClearance(bore, piston),
      },
    ],
    'feeler gauge',
    [
      {
        unit: 'in',
        given: { cylinder_bore: '4.2495', piston_diameter: '4.2450' },
        least: '0.0045',
        greatest: '0.0045',
        source: 'TM 55-1905-219-14-4 and -220-14-4: least skirt clearance .0045',
      },
    ],
  ),
  {
    id: 'ring_end_gap',
    label: 'ring end gap',
    description: 'Gap between the ends of a piston ring, the ring square in its cylinder.',
    quantity: 'length',
    figure: 'other',
    isNeverBelowZero: true,
    family: familyOf('cylinder', 'ring'),
    of: 'ring',
    dependsOn: ['cylinder'],
    usual: 'feeler gauge',
    formula: 'read directly with feelers',
    derivations: [],
    words: { above: 'wide', below: 'close' },
    source: 'TM 5-3895-370-14&P, p. 5-283',
    examples: [],
  },
];
