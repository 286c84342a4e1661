import { familyOf } from '../layout/family.ts';
import type { Characteristic } from './characteristic.ts';
import { clearance, clearanceThroughShells } from './clearance.ts';
import { clearanceOf, diameter } from './sizes.ts';

export const mains: readonly Characteristic[] = [
  ...diameter({
    id: 'main_journal_diameter',
    part: 'main_journal',
    label: 'main journal diameter',
    description: 'Diameter of a main bearing journal of the crankshaft.',
    family: familyOf('main'),
    kind: 'shaft',
    usual: 'micrometer',
    taperBy: 'ends',
    madeOf: ['crankshaft'],
    graded: { part: 'main_journal', dimension: 'size' },
    source: 'TM 9-2815-202-34, p. 4-157',
  }),
  ...diameter({
    id: 'main_housing_bore',
    part: 'main_housing',
    label: 'main housing bore',
    description: 'Bore of a main bearing housing without shells, cap tightened.',
    family: familyOf('main'),
    kind: 'bore',
    usual: 'bore gauge',
    taperBy: 'ends',
    madeOf: ['block'],
    graded: { part: 'main_shell', dimension: 'shell housing' },
    source: 'TM 9-2815-256-24, p. 3-180',
  }),
  {
    id: 'main_shell_thickness',
    label: 'main shell thickness',
    description:
      'Thickness of a main bearing shell at its middle; two figures are the upper and the lower half.',
    quantity: 'length',
    family: familyOf('main'),
    halves: true,
    usual: 'ball micrometer',
    formula: 'as read; the thinner and the thicker half are both judged',
    derivations: [],
    words: { above: 'thick', below: 'thin' },
    graded: { part: 'main_shell', dimension: 'shell wall' },
    source: 'TM 55-1905-220-14-7: (ball + shell) − ball',
    examples: [],
  },
  ...diameter({
    id: 'main_bearing_bore',
    part: 'main_bearing',
    label: 'main bearing bore',
    description: 'Bore of a main bearing with its shells in and the cap tightened, square to the split line.',
    family: familyOf('main'),
    kind: 'bore with shells',
    usual: 'bore gauge',
    taperBy: 'ends',
    madeOf: ['block'],
    graded: { part: 'main_shell', dimension: 'bore with shells' },
    source: 'TM 9-2815-220-24, WP 0138-8',
  }),
  clearanceOf(
    {
      id: 'main_bearing_clearance',
      label: 'main bearing clearance',
      description: 'Diametral oil clearance of a main bearing.',
      family: familyOf('main'),
      formula: 'bearing bore − journal, or housing bore − both shells − journal, or read directly',
      source: 'TM 5-3895-347-14P and TM 9-2815-256-24, p. 3-180',
    },
    [
      {
        route: 'bearing bore − journal',
        inputs: ['main_bearing_bore', 'main_journal_diameter'],
        compute: ([bore, journal]) => bore && journal && clearance(bore, journal),
      },
      {
        route: 'housing − shells − journal',
        inputs: ['main_housing_bore', 'main_shell_thickness', 'main_journal_diameter'],
        compute: ([housing, shells, journal]) =>
          housing && shells && journal && clearanceThroughShells(housing, shells, journal),
      },
    ],
    'gauging strip',
    [
      {
        unit: 'mm',
        given: { main_bearing_bore: '60.040', main_journal_diameter: '59.990' },
        least: '0.050',
        greatest: '0.050',
        source: 'invented journal against the least bore of TM 5-4320-302-14, p. 6-181',
      },
      {
        unit: 'in',
        given: { main_housing_bore: '3.251', main_shell_thickness: '0.1250', main_journal_diameter: '3.000' },
        least: '0.0010',
        greatest: '0.0010',
        source: 'TM 5-3895-347-14P: least clearance .0010 (journal from memory)',
      },
    ],
  ),
];
