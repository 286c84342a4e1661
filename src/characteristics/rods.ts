import { familyOf } from '../layout/family.ts';
import { relate } from '../layout/relate.ts';
import type { Characteristic, Derivation } from './characteristic.ts';
import { clearance, clearanceThroughShells, lessAll } from './clearance.ts';
import { clearanceOf, diameter } from './sizes.ts';

/** All rods of a pin lie beside each other on it. */
const besideItsRods: Derivation = {
  route: 'crankpin width − its rods',
  inputs: ['crankpin_width', 'rod_big_end_width'],
  places: (layout, position) => {
    const rodsOnIt = relate(layout, position, familyOf('cylinder')) ?? [];
    return rodsOnIt.length === 0
      ? undefined
      : [
          { id: 'crankpin_width', position },
          ...rodsOnIt.map((each) => ({ id: 'rod_big_end_width', position: each })),
        ];
  },
  compute: ([pin, ...widths]) => pin && lessAll(pin, widths),
};

export const rods: readonly Characteristic[] = [
  ...diameter({
    name: 'crankpin',
    label: 'crankpin',
    size: 'diameter',
    of: 'crankpin',
    usualGrid: { stations: ['front', 'rear'], directions: ['throw', 'square'] },
    description: 'Diameter of a crankpin, the journal that a connecting rod runs on.',
    family: familyOf('crankpin'),
    usual: 'micrometer',
    taperBy: 'ends',
    dimension: 'size',
    source: 'TM 9-2815-202-34, p. 4-157',
  }),
  ...diameter({
    name: 'rod_housing',
    label: 'rod housing',
    size: 'bore',
    of: 'rod_housing',
    dependsOn: ['rod_bolt'],
    usualGrid: { stations: ['front', 'rear'], directions: ['square', '+45', '-45'] },
    description: 'Big-end bore of a connecting rod without shells, cap tightened. Positions are cylinders.',
    family: familyOf('cylinder'),
    usual: 'bore gauge',
    taperBy: 'ends',
    dimension: 'size',
    source: 'TM 9-2815-225-34&P, app. F',
  }),
  {
    id: 'rod_shell_thickness',
    label: 'rod shell thickness',
    of: 'rod_shell',
    dependsOn: [],
    figure: 'size',
    grid: 'rod_shell',
    description: 'Thickness of a big-end shell at its middle; two figures are the upper and the lower half.',
    quantity: 'length',
    family: familyOf('cylinder'),
    halves: true,
    usual: 'ball micrometer',
    formula: 'as read; the thinner and the thicker half are both judged',
    derivations: [],
    words: { above: 'thick', below: 'thin' },
    dimension: 'shell wall',
    source: 'TM 55-1905-220-14-7: (ball + shell) − ball',
    examples: [],
  },
  ...diameter({
    name: 'rod_bearing',
    label: 'rod bearing',
    size: 'bore',
    of: 'rod_shell',
    dependsOn: ['rod_housing', 'rod_bolt'],
    expandsWith: 'rod_housing',
    usualGrid: { stations: ['front', 'rear'], directions: ['square'] },
    description: 'Big-end bore with its shells in and the cap tightened, square to the split line.',
    family: familyOf('cylinder'),
    hasShells: true,
    usual: 'bore gauge',
    taperBy: 'ends',
    dimension: 'bore with shells',
    source: 'TM 5-3895-346-14, sheet 204',
  }),
  clearanceOf(
    {
      id: 'rod_bearing_clearance',
      label: 'rod bearing clearance',
      of: 'rod_shell',
      dependsOn: ['crankpin', 'rod_housing', 'rod_bolt'],
      grid: 'rod_bearing',
      description: 'Diametral oil clearance of a big-end bearing. Positions are cylinders.',
      family: familyOf('cylinder'),
      formula: 'bearing bore − crankpin, or housing bore − both shells − crankpin, or read directly',
      source: 'TM 5-3895-346-14, sheet 204',
    },
    [
      {
        route: 'bearing bore − crankpin',
        inputs: ['rod_bearing_bore', 'crankpin_diameter'],
        compute: ([bore, pin]) => bore && pin && clearance(bore, pin),
      },
      {
        route: 'housing − shells − crankpin',
        inputs: ['rod_housing_bore', 'rod_shell_thickness', 'crankpin_diameter'],
        compute: ([housing, shells, pin]) =>
          housing && shells && pin && clearanceThroughShells(housing, shells, pin),
      },
    ],
    'gauging strip',
    [
      {
        unit: 'in',
        given: { rod_bearing_bore: '2.5015', crankpin_diameter: '2.500' },
        least: '0.0015',
        greatest: '0.0015',
        source: 'TM 5-3895-346-14, sheet 204: least clearance .0015 (crankpin of TM 5-4320-300-14, p. 6-103)',
      },
      {
        unit: 'mm',
        given: { rod_housing_bore: '39.008', rod_shell_thickness: '1.486', crankpin_diameter: '35.992' },
        least: '0.044',
        greatest: '0.044',
        source:
          'Honda shop manual, January 1982, p. 12-10, bearing selection: greatest clearance .044 (computed)',
      },
    ],
  ),
  clearanceOf(
    {
      id: 'rod_side_clearance',
      label: 'rod side clearance',
      of: 'rod',
      dependsOn: ['crankpin'],
      isAssemblyFigure: true,
      description: 'How far the rods of a crankpin can move along it.',
      family: familyOf('crankpin'),
      formula: 'crankpin width − big end width of each rod on it, or read directly with feelers or a dial',
      source: 'TM 9-2815-202-34, p. 4-157',
    },
    [besideItsRods],
    'feeler gauge',
    [
      {
        unit: 'in',
        given: { crankpin_width: '2.0020', rod_big_end_width: '1.9900' },
        least: '0.0120',
        greatest: '0.0120',
        source: 'worked by hand, invented readings',
      },
    ],
  ),
];
