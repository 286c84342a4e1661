import { familyOf } from '../layout/family.ts';
import { addValues } from '../measurement/value.ts';
import type { Characteristic } from './characteristic.ts';
import { bothHalves, clearance } from './clearance.ts';
import { type Grid, type Measured, summary, valuesOf } from './grid.ts';
import { readSize } from './readFigure.ts';
import { clearanceOf } from './sizes.ts';
import { TURNING } from './turning.ts';

/** Two thicknesses are the washers of both sides; one stands for both. */
function overBothWashers(housing: Grid, washers: Grid): Measured | undefined {
  const both = bothHalves(washers);
  return both && summary(valuesOf(housing).map((width) => addValues(width, both)));
}

export const crankshaft: readonly Characteristic[] = [
  {
    id: 'thrust_journal_width',
    label: 'thrust journal width',
    of: 'thrust_journal',
    dependsOn: [],
    figure: 'size',
    grid: 'thrust_journal',
    description: 'Width between the thrust faces of the crankshaft.',
    quantity: 'length',
    family: familyOf('engine'),
    usual: 'inside micrometer',
    formula: 'as read',
    derivations: [],
    dimension: 'size',
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 9-2815-256-24, p. 3-185',
    examples: [],
  },
  readSize({
    id: 'thrust_housing_width',
    label: 'thrust housing width',
    of: 'thrust_cap',
    dependsOn: ['main_housing'],
    family: familyOf('engine'),
    description: 'Width of the main bearing housing that the thrust washers lie against, the washers out.',
    usual: 'micrometer',
    words: { above: 'wide', below: 'narrow' },
    source: 'common practice, no source',
  }),
  readSize({
    id: 'thrust_washer_thickness',
    label: 'thrust washer thickness',
    of: 'thrust_washer',
    family: familyOf('engine'),
    usualGrid: { stations: ['front', 'rear'], directions: [] },
    description: 'Thickness of the thrust washers; two figures are those of the front and of the rear.',
    usual: 'micrometer',
    dimension: 'washer',
    words: { above: 'thick', below: 'thin' },
    source: 'TM 55-1905-221-14-1, table 1-1: .1205 to .1220 in',
  }),
  {
    id: 'thrust_bearing_width',
    label: 'thrust bearing width',
    of: 'thrust_washer',
    dependsOn: ['thrust_cap', 'main_housing', 'main_shell'],
    figure: 'size',
    grid: 'thrust_bearing',
    description: 'Width over the thrust faces of the bearing, assembled with its washers.',
    quantity: 'length',
    family: familyOf('engine'),
    usual: 'micrometer',
    formula: 'as read, or thrust housing width + both thrust washers',
    derivations: [
      {
        route: 'housing + both washers',
        inputs: ['thrust_housing_width', 'thrust_washer_thickness'],
        compute: ([housing, washers]) => housing && washers && overBothWashers(housing, washers),
      },
    ],
    dimension: 'washer set',
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 9-2815-256-24, p. 3-185',
    examples: [
      {
        unit: 'in',
        given: {
          thrust_housing_width: '1.2860',
          thrust_washer_thickness: { rows: [['0.1205'], ['0.1220']] },
        },
        least: '1.5285',
        greatest: '1.5285',
        source: 'washers of TM 55-1905-221-14-1, table 1-1, on an invented housing',
      },
    ],
  },
  clearanceOf(
    {
      id: 'crankshaft_end_play',
      label: 'crankshaft end play',
      of: 'thrust_washer',
      dependsOn: ['thrust_journal', 'thrust_cap', 'main_shell'],
      figure: 'other',
      isAssemblyFigure: true,
      isNeverBelowZero: true,
      description: 'How far the crankshaft moves along its axis.',
      caution:
        'A lever may slip: push with a soft one, and keep fingers out of the throws and off the counterweights.',
      family: familyOf('engine'),
      formula: 'read directly with a dial, or thrust journal width − thrust bearing width',
      source: 'TM 9-2815-256-24, p. 3-185: thrust clearance = journal width − bearing width',
    },
    [
      {
        route: 'journal width − bearing width',
        inputs: ['thrust_journal_width', 'thrust_bearing_width'],
        compute: ([journal, bearing]) => journal && bearing && clearance(journal, bearing, []),
      },
    ],
    'dial indicator',
    [
      {
        unit: 'in',
        given: { thrust_journal_width: '1.534', thrust_bearing_width: '1.528' },
        least: '0.006',
        greatest: '0.006',
        source: 'least bearing width of TM 9-2815-256-24, p. 3-185, with an invented journal',
      },
    ],
  ),
  {
    id: 'crankshaft_runout',
    label: 'crankshaft runout',
    of: 'crankshaft',
    dependsOn: ['main_journal'],
    figure: 'other',
    isNeverBelowZero: true,
    description: 'Full indicator reading at a main journal, the crankshaft turned in its supports.',
    caution: TURNING,
    quantity: 'length',
    family: familyOf('main'),
    usual: 'dial indicator',
    formula: 'read directly: the full indicator reading, of which a bend is half',
    derivations: [],
    words: { above: 'over', below: 'under' },
    source: 'TM 55-1905-219-14-4 (full indicator reading)',
    examples: [],
  },
  {
    id: 'turning_torque',
    label: 'turning torque',
    of: 'crankshaft',
    dependsOn: [
      'main_journal',
      'crankpin',
      'thrust_journal',
      'main_shell',
      'main_housing',
      'main_bolt',
      'thrust_washer',
      'thrust_cap',
      'rod',
      'rod_bolt',
      'rod_shell',
      'cylinder',
      'piston',
      'ring',
    ],
    isAssemblyFigure: true,
    figure: 'other',
    description:
      'Torque that turns the crankshaft after a step of the assembly, running and not breaking away.',
    quantity: 'torque',
    caution: TURNING,
    atTheBench: 'The running torque, not the one that starts it turning.',
    family: familyOf('step'),
    usual: 'torque wrench',
    formula: "read directly after each step; a step's rise is compared with the rises of like steps",
    derivations: [],
    words: { above: 'stiff', below: 'free' },
    source: 'common practice, no source',
    examples: [],
  },
];
