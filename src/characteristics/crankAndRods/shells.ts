import { type Family, familyOf } from '../../layout/family.ts';
import { meanValue, subtractValues } from '../../measurement/value.ts';
import type { Characteristic } from '../characteristic.ts';
import { type Grid, type Measured, summary, valuesOf } from '../grid.ts';
import { read } from '../readFigure.ts';

interface Shells {
  readonly name: 'main' | 'rod';
  readonly family: Family;
  readonly bolts: readonly string[];
}

const CRUSH_CAUTION =
  'Never file a cap or a parting face to change the crush: the cap would not hold its bore, and nothing puts it back.';

/** How shells grip their housing: a half stands wider than its bore, and a little proud of the joint. */
const gripOf = ({ name, family, bolts }: Shells): readonly Characteristic[] => [
  read({
    id: `${name}_shell_free_width`,
    label: `${name} shell free width`,
    of: `${name}_shell`,
    family,
    halves: true,
    figure: 'size',
    description:
      'Width of a free half across its parting faces; two figures are the upper and the lower half.',
    usual: 'caliper',
    words: { above: 'wide', below: 'narrow' },
    source: 'common practice, no source',
  }),
  read({
    id: `${name}_shell_free_spread`,
    label: `${name} shell free spread`,
    of: `${name}_shell`,
    dependsOn: [`${name}_housing`, ...bolts],
    family,
    halves: true,
    description: 'How much wider a free half is across its parting faces than the bore that it lies in.',
    usual: 'caliper',
    formula: 'free width − housing bore, or read directly',
    derivations: [
      {
        route: 'free width − housing bore',
        inputs: [`${name}_shell_free_width`, `${name}_housing_bore`],
        compute: ([width, bore]) => width && bore && wider(width, bore),
      },
    ],
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 5-3820-256-24-5, sect. 5, p. 13: about .025 in',
    examples: [
      {
        unit: 'in',
        given: {
          [`${name}_shell_free_width`]: { rows: [['3.277'], ['3.275']] },
          [`${name}_housing_bore`]: '3.2515',
        },
        least: '0.0235',
        greatest: '0.0255',
        source: 'worked by hand, invented readings',
      },
    ],
  }),
  read({
    id: `${name}_shell_crush`,
    label: `${name} shell crush`,
    of: `${name}_shell`,
    dependsOn: [`${name}_housing`, ...bolts],
    family,
    description:
      'How far the shells stand proud of the joint: one bolt of the cap tightened, the other loose, feelers under the loose side; or by a crush fixture, as the limit says.',
    usual: 'feeler gauge',
    words: { above: 'proud', below: 'low' },
    caution: CRUSH_CAUTION,
    source: 'TM 55-1905-220-14-4 and TM 5-3820-256-24-5 describe it; no figures found',
  }),
];

function wider(widths: Grid, bore: Grid): Measured | undefined {
  const bores = valuesOf(bore);
  if (bores.length === 0) return undefined;
  const mean = meanValue(bores);
  return summary(valuesOf(widths).map((width) => subtractValues(width, mean)));
}

export const shells: readonly Characteristic[] = [
  ...gripOf({ name: 'main', family: familyOf('main'), bolts: ['main_cap', 'main_bolt'] }),
  ...gripOf({ name: 'rod', family: familyOf('cylinder'), bolts: ['rod_bolt'] }),
];
