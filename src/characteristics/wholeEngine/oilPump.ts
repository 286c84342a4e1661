import { ENGINE } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { read, readSize } from '../readFigure.ts';
import { clearanceOf, diameter } from '../sizes.ts';

const SOURCE = 'TM 5-4310-354-14, tables 5-2 and 7-1';

const round = (
  about: Pick<Parameters<typeof diameter>[0], 'name' | 'label' | 'of' | 'description' | 'size'>,
): readonly Characteristic[] =>
  diameter({
    ...about,
    family: ENGINE,
    usual: about.size === 'diameter' ? 'micrometer' : 'bore gauge',
    taperBy: 'ends',
    source: SOURCE,
  });

interface Fit {
  readonly id: string;
  readonly label: string;
  readonly of: string;
  readonly dependsOn: readonly string[];
  readonly description: string;
  readonly note?: string;
  /** The outer and the inner size, by id. */
  readonly sizes: readonly [outer: string, inner: string];
  readonly route: string;
  readonly example: Characteristic['examples'][number];
}

const runningFit = ({ sizes, route, example, ...about }: Fit): Characteristic =>
  clearanceOf(
    { ...about, family: ENGINE, formula: `${route}, or read directly`, source: SOURCE },
    [
      {
        route,
        inputs: sizes,
        compute: ([outer, inner]) => outer && inner && clearance(outer, inner, []),
      },
    ],
    'feeler gauge',
    [example],
  );

const inch = (
  given: Readonly<Record<string, string>>,
  gives: string,
): Characteristic['examples'][number] => ({
  unit: 'in',
  given,
  least: gives,
  greatest: gives,
  source: SOURCE,
});

/** The pump taken apart: gears or rotors in their body, the shaft in its bush, the relief valve. */
export const oilPump: readonly Characteristic[] = [
  ...round({
    name: 'pump_gear',
    label: 'pump gear',
    of: 'pump_gear',
    size: 'diameter',
    description:
      'Diameter of a gear or of the outer rotor of the oil pump; of several the least and the greatest.',
  }),
  ...round({
    name: 'pump_body',
    label: 'pump body',
    of: 'pump_body',
    size: 'bore',
    description: 'Bore in the body of the oil pump that a gear or the outer rotor runs in.',
  }),
  runningFit({
    id: 'pump_body_clearance',
    label: 'pump body clearance',
    of: 'pump_gear',
    dependsOn: ['pump_body'],
    description:
      'Diametral clearance of a gear or the outer rotor in the body: bore less diameter, and not the gap on one side.',
    note: 'A feeler reads all of it where the gear is pushed against the other side, and half of it on each side where it stands in the middle: a manual that gives the gap on one side gives half of this.',
    sizes: ['pump_body_bore', 'pump_gear_diameter'],
    route: 'pump body bore − pump gear',
    example: inch({ pump_body_bore: '1.5005', pump_gear_diameter: '1.4985' }, '0.0020'),
  }),
  readSize({
    id: 'pump_gear_width',
    label: 'pump gear width',
    of: 'pump_gear',
    description: 'Width of a gear or rotor of the oil pump along its shaft.',
    family: ENGINE,
    usual: 'micrometer',
    words: { above: 'wide', below: 'narrow' },
    source: SOURCE,
  }),
  readSize({
    id: 'pump_body_depth',
    label: 'pump body depth',
    of: 'pump_body',
    description: 'Depth of the body of the oil pump that a gear or rotor lies in.',
    family: ENGINE,
    usual: 'depth micrometer',
    words: { above: 'deep', below: 'shallow' },
    source: SOURCE,
  }),
  runningFit({
    id: 'pump_end_clearance',
    label: 'pump end clearance',
    of: 'pump_gear',
    dependsOn: ['pump_body'],
    description:
      'Play of the gears or rotors under the cover of the oil pump, by straightedge and feelers or by sizes.',
    sizes: ['pump_body_depth', 'pump_gear_width'],
    route: 'pump body depth − pump gear width',
    example: inch({ pump_body_depth: '1.5640', pump_gear_width: '1.5620' }, '0.0020'),
  }),
  read({
    id: 'pump_tip_clearance',
    label: 'pump tip clearance',
    of: 'pump_gear',
    description: 'Gap between the tips of the inner and the outer rotor, where they face each other.',
    family: ENGINE,
    usual: 'feeler gauge',
    figure: 'clearance',
    words: { above: 'loose', below: 'tight' },
    source: 'common practice, no source',
  }),
  read({
    id: 'pump_gear_backlash',
    label: 'pump gear backlash',
    of: 'pump_gear',
    description: 'Play between the teeth of the gears of the oil pump.',
    family: ENGINE,
    usual: 'feeler gauge',
    figure: 'clearance',
    words: { above: 'loose', below: 'tight' },
    source: 'TM 5-3825-229-14&P, p. 5-33',
  }),
  ...round({
    name: 'pump_shaft',
    label: 'pump shaft',
    of: 'pump_shaft',
    size: 'diameter',
    description: 'Diameter of the shaft of the oil pump where it runs in its bush.',
  }),
  ...round({
    name: 'pump_bush',
    label: 'pump bush',
    of: 'pump_body',
    size: 'bore',
    description: 'Bore that the shaft of the oil pump runs in.',
  }),
  runningFit({
    id: 'pump_shaft_clearance',
    label: 'pump shaft clearance',
    of: 'pump_shaft',
    dependsOn: ['pump_body'],
    description: 'Diametral clearance of the shaft of the oil pump in its bush.',
    sizes: ['pump_bush_bore', 'pump_shaft_diameter'],
    route: 'pump bush bore − pump shaft',
    example: inch({ pump_bush_bore: '0.6255', pump_shaft_diameter: '0.6245' }, '0.0010'),
  }),
  ...round({
    name: 'relief_plunger',
    label: 'relief plunger',
    of: 'relief_valve',
    size: 'diameter',
    description: 'Diameter of the plunger of the oil pressure relief valve.',
  }),
  ...round({
    name: 'relief_valve',
    label: 'relief valve',
    of: 'pump_body',
    size: 'bore',
    description: 'Bore that the plunger of the oil pressure relief valve runs in.',
  }),
  runningFit({
    id: 'relief_plunger_clearance',
    label: 'relief plunger clearance',
    of: 'relief_valve',
    dependsOn: ['pump_body'],
    description: 'Diametral clearance of the relief plunger in its bore.',
    sizes: ['relief_valve_bore', 'relief_plunger_diameter'],
    route: 'relief valve bore − relief plunger',
    example: {
      unit: 'mm',
      given: { relief_valve_bore: '18.24', relief_plunger_diameter: '18.18' },
      least: '0.06',
      greatest: '0.06',
      source: 'TM 5-3895-382-24: least clearance .06 mm',
    },
  }),
];
