import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { read, readSize } from '../readFigure.ts';
import { clearanceOf } from '../sizes.ts';

const RING = familyOf('cylinder', 'ring');

/** Rings and the grooves that they lie in; the end gap stands with the cylinders. */
export const rings: readonly Characteristic[] = [
  readSize({
    id: 'ring_groove_width',
    label: 'ring groove width',
    of: 'piston',
    family: RING,
    description:
      'Width of a groove in the piston, clean of carbon, by gauge blocks or by a new ring and feelers.',
    usual: 'gauge block',
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 5-3895-382-24, rings and grooves',
  }),
  readSize({
    id: 'ring_width',
    label: 'ring width',
    of: 'ring',
    family: RING,
    description: 'Width of a ring along the cylinder, at several places round it.',
    usual: 'micrometer',
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 5-3895-382-24, rings and grooves',
  }),
  clearanceOf(
    {
      id: 'ring_side_clearance',
      label: 'ring side clearance',
      of: 'ring',
      dependsOn: ['piston'],
      description: 'How far a ring can move along the cylinder in its groove.',
      family: RING,
      formula: 'groove width − ring width, or read directly with feelers between the ring and its groove',
      caution: 'Ring lands and new rings cut: wear gloves when feelers are drawn round a groove.',
      source: 'TM 5-3895-382-24 (groove, ring, clearance)',
    },
    [
      {
        route: 'groove − ring',
        inputs: ['ring_groove_width', 'ring_width'],
        compute: ([groove, ring]) => groove && ring && clearance(groove, ring, []),
      },
    ],
    'feeler gauge',
    [
      {
        unit: 'mm',
        given: { ring_groove_width: '2.57', ring_width: '2.49' },
        least: '0.08',
        greatest: '0.08',
        source: 'TM 5-3895-382-24: groove 2.57 to 2.59, ring 2.48 to 2.49, clearance .08 to .11 mm',
      },
    ],
  ),
  readSize({
    id: 'ring_radial_thickness',
    label: 'ring radial thickness',
    of: 'ring',
    family: RING,
    description: 'Thickness of a ring between the cylinder wall and the piston.',
    usual: 'micrometer',
    words: { above: 'thick', below: 'thin' },
    source: 'common practice, no source',
  }),
  read({
    id: 'ring_free_gap',
    label: 'ring free gap',
    of: 'ring',
    family: RING,
    description:
      'Gap between the ends of a ring that lies free, out of its cylinder: it closes as the ring tires.',
    usual: 'caliper',
    words: { above: 'wide', below: 'close' },
    source: 'common practice, no source: limits are 80 % of a new ring in the service data that print both',
  }),
  read({
    id: 'ring_tension',
    label: 'ring tension',
    of: 'ring',
    family: RING,
    quantity: 'force',
    description: 'Force across a ring that closes it to its gap in the cylinder, in a ring tester.',
    usual: 'spring scale',
    words: { above: 'strong', below: 'weak' },
    caution: 'A ring under tension springs out of the tester: wear eye protection.',
    source: 'TM 10-3930-653-14&P, p. 70',
  }),
];
