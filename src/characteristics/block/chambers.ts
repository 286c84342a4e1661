import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { read, readSize } from '../readFigure.ts';

const [CYLINDER, BANK] = [familyOf('cylinder'), familyOf('bank')];

export const FILLING =
  'Spirit and paraffin for measuring volumes burn: good air and no flame or spark, since the vapour lies in the bowl of the chamber.';

/** What is measured of the room over a piston. */
export const chambers: readonly Characteristic[] = [
  read({
    id: 'chamber_volume',
    label: 'chamber volume',
    of: 'head',
    dependsOn: ['valve'],
    family: CYLINDER,
    quantity: 'volume',
    description:
      'Volume of a combustion chamber in the head, valves and plug in, filled from a burette under a plate.',
    usual: 'burette',
    words: { above: 'large', below: 'small' },
    caution: FILLING,
    source: 'common practice, no source',
  }),
  read({
    id: 'piston_crown_volume',
    label: 'piston crown volume',
    of: 'piston',
    family: CYLINDER,
    quantity: 'volume',
    description:
      'Volume of the dish and the valve pockets of a crown below its flat; a dome above the flat is below zero.',
    usual: 'burette',
    words: { above: 'large', below: 'small' },
    caution: FILLING,
    source: 'common practice, no source',
  }),
  readSize({
    id: 'head_gasket_thickness',
    label: 'head gasket thickness',
    of: 'head_gasket',
    family: BANK,
    description:
      'Thickness of the head gasket when it is clamped, as its maker states it or as an old one is left.',
    usual: 'micrometer',
    words: { above: 'thick', below: 'thin' },
    source: 'common practice, no source',
  }),
  readSize({
    id: 'head_gasket_opening',
    label: 'head gasket opening',
    of: 'head_gasket',
    family: BANK,
    description: 'Diameter of the holes in the head gasket at the cylinders, clamped.',
    usual: 'caliper',
    source: 'common practice, no source',
  }),
];
