import { familyOf } from '../layout/family.ts';
import type { Characteristic } from './characteristic.ts';
import { clearance, clearanceThroughShells } from './clearance.ts';
import { clearanceOf, diameter } from './sizes.ts';

export const rods: readonly Characteristic[] = [
  ...diameter({
    id: 'crankpin_diameter',
    part: 'crankpin',
    label: 'crankpin diameter',
    description: 'Diameter of a crankpin, the journal that a connecting rod runs on.',
    family: familyOf('crankpin'),
    kind: 'shaft',
    usual: 'micrometer',
    taperBy: 'ends',
    madeOf: ['crankshaft'],
    graded: { part: 'crankpin', dimension: 'size' },
    source: 'TM 9-2815-202-34, p. 4-157',
  }),
  ...diameter({
    id: 'rod_housing_bore',
    part: 'rod_housing',
    label: 'rod housing bore',
    description: 'Big-end bore of a connecting rod without shells, cap tightened. Positions are cylinders.',
    family: familyOf('cylinder'),
    kind: 'bore',
    usual: 'bore gauge',
    taperBy: 'ends',
    madeOf: ['rods'],
    graded: { part: 'rod_shell', dimension: 'shell housing' },
    source: 'TM 9-2815-225-34&P, app. F',
  }),
  {
    id: 'rod_shell_thickness',
    label: 'rod shell thickness',
    description: 'Thickness of a big-end shell at its middle; two figures are the upper and the lower half.',
    quantity: 'length',
    family: familyOf('cylinder'),
    halves: true,
    usual: 'ball micrometer',
    formula: 'as read; the thinner and the thicker half are both judged',
    derivations: [],
    words: { above: 'thick', below: 'thin' },
    graded: { part: 'rod_shell', dimension: 'shell wall' },
    source: 'TM 55-1905-220-14-7: (ball + shell) − ball',
    examples: [],
  },
  ...diameter({
    id: 'rod_bearing_bore',
    part: 'rod_bearing',
    label: 'rod bearing bore',
    description: 'Big-end bore with its shells in and the cap tightened, square to the split line.',
    family: familyOf('cylinder'),
    kind: 'bore with shells',
    usual: 'bore gauge',
    taperBy: 'ends',
    madeOf: ['rods'],
    graded: { part: 'rod_shell', dimension: 'bore with shells' },
    source: 'TM 5-3895-346-14, p. 204',
  }),
  clearanceOf(
    {
      id: 'rod_bearing_clearance',
      label: 'rod bearing clearance',
      description: 'Diametral oil clearance of a big-end bearing. Positions are cylinders.',
      family: familyOf('cylinder'),
      formula: 'bearing bore − crankpin, or housing bore − both shells − crankpin, or read directly',
      source: 'TM 5-3895-346-14, p. 204',
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
        source: 'TM 5-3895-346-14, p. 204: least clearance .0015 (crankpin from memory)',
      },
      {
        unit: 'mm',
        given: { rod_housing_bore: '39.008', rod_shell_thickness: '1.486', crankpin_diameter: '35.992' },
        least: '0.044',
        greatest: '0.044',
        source: "a maker's shop manual of 1982, bearing selection table: greatest clearance .044",
      },
    ],
  ),
  clearanceOf(
    {
      id: 'rod_side_clearance',
      label: 'rod side clearance',
      description: 'How far the rods of a crankpin can move along it.',
      family: familyOf('crankpin'),
      formula: 'read directly, with feelers or a dial',
      source: 'TM 9-2815-202-34, p. 4-157',
    },
    [],
    'feeler gauge',
    [],
  ),
];
