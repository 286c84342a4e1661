import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { readSize } from '../readFigure.ts';
import { workedOut } from '../workedOut.ts';

const LOBE = familyOf('lobe');
const WORDS = { above: 'high', below: 'low' };
const SOURCE = 'TM 5-3805-260-24, p. 1-11, and TM 5-3805-258-24-1, p. 4-28';

const height = readSize({
  id: 'lobe_height',
  label: 'lobe height',
  of: 'lobe',
  description: 'Greatest size over a cam lobe, from its nose to the base circle opposite.',
  family: LOBE,
  usual: 'micrometer',
  words: WORDS,
  source: SOURCE,
});

const baseCircle = readSize({
  id: 'lobe_base_circle',
  label: 'lobe base circle',
  of: 'lobe',
  description: 'Least size over a cam lobe, across its base circle.',
  note: 'A lobe whose ramps reach past half of its base circle has no such size: read its lift with a dial.',
  family: LOBE,
  usual: 'micrometer',
  source: SOURCE,
});

/** The lobes of the camshaft. */
export const lobes: readonly Characteristic[] = [
  height,
  baseCircle,
  workedOut({
    id: 'lobe_lift',
    isNeverBelowZero: true,
    label: 'lobe lift',
    of: 'lobe',
    description: 'How far a cam lobe lifts: by sizes, or by a dial on the lifter as the camshaft turns once.',
    caution:
      'By a dial the crankshaft is turned: ignition and fuel off, by hand, fingers clear of gears and chain.',
    family: LOBE,
    usual: 'dial indicator',
    words: WORDS,
    route: 'lobe height − base circle',
    formula: 'lobe_height - lobe_base_circle',
    from: [height, baseCircle],
    source: SOURCE,
    examples: [
      {
        unit: 'in',
        given: { lobe_height: '1.7377', lobe_base_circle: '1.4300' },
        least: '0.3077',
        greatest: '0.3077',
        source: 'lift specified in TM 5-3805-260-24, p. 1-11, over an invented base circle',
      },
    ],
  }),
];
