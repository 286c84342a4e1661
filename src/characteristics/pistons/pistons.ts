import { familyOf } from '../../layout/family.ts';
import { scaleValue } from '../../measurement/value.ts';
import { fraction } from '../../quantity/fraction.ts';
import type { Characteristic } from '../characteristic.ts';
import { type Grid, type Measured, summary, valuesOf } from '../grid.ts';
import { read } from '../readFigure.ts';

const TURNING = 'Keep hands clear while the crankshaft is turned: by hand, never by the starter.';

/** Where the crown of a piston stands. */
export const pistons: readonly Characteristic[] = [
  read({
    id: 'piston_compression_height',
    label: 'piston compression height',
    of: 'piston',
    family: familyOf('cylinder'),
    description:
      'From the middle of the pin to the flat of the crown: crown to pin bore and half of the pin bore.',
    usual: 'height gauge',
    words: { above: 'tall', below: 'short' },
    source: 'common practice, no source',
  }),
  read({
    id: 'piston_protrusion',
    label: 'piston protrusion',
    of: 'piston',
    dependsOn: ['rod', 'crankpin', 'crankshaft', 'block'],
    isAssemblyFigure: true,
    family: familyOf('cylinder'),
    grid: 'piston_protrusion',
    description:
      'How far the crown stands above the deck at top dead centre: a dial on a bridge, over the pin at the front and at the rear, so that the piston does not tip. Below the deck it is below zero.',
    usual: 'dial indicator',
    formula: 'read directly, above the deck; the least and the greatest of the points are both judged',
    words: { above: 'proud', below: 'low' },
    caution: TURNING,
    source: 'TM 5-3825-225-14&P, rods and pistons',
  }),
  read({
    id: 'deck_clearance',
    label: 'deck clearance',
    of: 'piston',
    dependsOn: ['rod', 'crankpin', 'crankshaft', 'block'],
    isAssemblyFigure: true,
    family: familyOf('cylinder'),
    description:
      'How far the crown stays below the deck at top dead centre; above the deck it is below zero.',
    usual: 'depth micrometer',
    formula: 'read directly, below the deck, or − piston protrusion',
    derivations: [
      {
        route: '− piston protrusion',
        inputs: ['piston_protrusion'],
        compute: ([protrusion]) => protrusion && turnedRound(protrusion),
      },
    ],
    words: { above: 'deep', below: 'proud' },
    caution: TURNING,
    source: 'common practice, no source',
    examples: [
      {
        unit: 'in',
        given: { piston_protrusion: { rows: [['-0.024'], ['-0.026']] } },
        least: '0.024',
        greatest: '0.026',
        source: 'worked by hand, invented readings',
      },
    ],
  }),
];

const turnedRound = (grid: Grid): Measured | undefined =>
  summary(valuesOf(grid).map((value) => scaleValue(value, fraction(-1))));
