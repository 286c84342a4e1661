import { familyOf } from '../layout/family.ts';
import type { Characteristic } from './characteristic.ts';
import { clearance } from './clearance.ts';
import { clearanceOf } from './sizes.ts';

export const crankshaft: readonly Characteristic[] = [
  {
    id: 'thrust_journal_width',
    label: 'thrust journal width',
    description: 'Width between the thrust faces of the crankshaft.',
    quantity: 'length',
    family: familyOf('engine'),
    usual: 'inside micrometer',
    formula: 'as read',
    derivations: [],
    graded: { part: 'thrust_journal', dimension: 'size' },
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 9-2815-256-24, p. 3-185',
    examples: [],
  },
  {
    id: 'thrust_bearing_width',
    label: 'thrust bearing width',
    description: 'Width over the thrust faces of the bearing, assembled with its washers.',
    quantity: 'length',
    family: familyOf('engine'),
    usual: 'micrometer',
    formula: 'as read',
    derivations: [],
    graded: { part: 'thrust_washer', dimension: 'washer set' },
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 9-2815-256-24, p. 3-185',
    examples: [],
  },
  clearanceOf(
    {
      id: 'crankshaft_end_play',
      label: 'crankshaft end play',
      description: 'How far the crankshaft moves along its axis.',
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
    description: 'Full indicator reading at a main journal, the crankshaft turned in its supports.',
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
    description:
      'Torque that turns the crankshaft after a step of the assembly, running and not breaking away.',
    quantity: 'torque',
    family: familyOf('step'),
    usual: 'torque wrench',
    formula: "read directly after each step; a step's rise is compared with the rises of like steps",
    derivations: [],
    words: { above: 'stiff', below: 'free' },
    source: 'common practice, no source',
    examples: [],
  },
];
