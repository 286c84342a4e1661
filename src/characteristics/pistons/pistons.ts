import { familyOf } from '../../layout/family.ts';
import { addValues, scaleValue, subtractValues } from '../../measurement/value.ts';
import { fraction } from '../../quantity/fraction.ts';
import { meanOf } from '../block/volume.ts';
import type { Characteristic } from '../characteristic.ts';
import { type Grid, type Measured, summary, valuesOf } from '../grid.ts';
import { read } from '../readFigure.ts';
import { TURNING } from '../turning.ts';

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
    formula:
      'read directly, above the deck, each point judged; or stroke / 2 + rod centre distance + compression height − deck height',
    derivations: [
      {
        route: 'stroke / 2 + rod + compression height − deck height',
        inputs: ['crank_stroke', 'rod_centre_distance', 'piston_compression_height', 'deck_height'],
        compute: stack,
      },
    ],
    words: { above: 'proud', below: 'low' },
    caution: TURNING,
    source: 'TM 5-3825-225-14&P, rods and pistons',
    examples: [
      {
        unit: 'in',
        given: {
          crank_stroke: '4.000',
          rod_centre_distance: '6.000',
          piston_compression_height: '1.000',
          deck_height: '9.025',
        },
        least: '-0.025',
        greatest: '-0.025',
        source: 'a trade magazine of February 2003: deck clearance .025 in',
      },
    ],
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
    onlyWithLimits: true,
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

/** The height of the crown over the axis of the crankshaft, less that of the deck. */
function stack(grids: readonly Grid[]): Measured | undefined {
  const [stroke, rod, height, deck] = grids.map(meanOf);
  if (stroke === undefined || rod === undefined || height === undefined || deck === undefined)
    return undefined;
  const crown = [rod, height].reduce(addValues, scaleValue(stroke, fraction(1, 2)));
  return summary([subtractValues(crown, deck)]);
}

const turnedRound = (grid: Grid): Measured | undefined =>
  summary(valuesOf(grid).map((value) => scaleValue(value, fraction(-1))));
