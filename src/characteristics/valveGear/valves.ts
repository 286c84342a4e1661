import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { read, readSize } from '../readFigure.ts';
import { clearanceOf, diameter } from '../sizes.ts';

const VALVE = familyOf('valve');
const ALONG = { stations: ['top', 'middle', 'bottom'], directions: ['along', 'across'] };

const SODIUM =
  'A hollow exhaust valve may hold sodium, which burns and bursts in water: never cut, weld, crush or scrap one as plain steel; where a stem is cracked or broken keep it dry and follow the maker’s manual.';
const PRESSED =
  'Guides go in and out under a press, some with the head heated or the guide frozen: eye protection, gloves against heat and cold, and nobody in line with the press.';

/** Valves, their guides, and how one runs in the other. */
export const valves: readonly Characteristic[] = [
  ...diameter({
    name: 'valve_stem',
    label: 'valve stem',
    size: 'diameter',
    of: 'valve',
    usualGrid: ALONG,
    description: 'Diameter of a valve stem where it runs in its guide.',
    family: VALVE,
    usual: 'micrometer',
    taperBy: 'range',
    dimension: 'size',
    caution: SODIUM,
    source: 'TM 9-6115-464-34, p. 1-15',
  }),
  ...diameter({
    name: 'valve_guide',
    label: 'valve guide',
    size: 'bore',
    of: 'valve_guide',
    usualGrid: ALONG,
    description: 'Bore of a valve guide, pressed in and finished.',
    family: VALVE,
    usual: 'bore gauge',
    taperBy: 'range',
    source: 'TM 9-6115-464-34, p. 1-15',
  }),
  clearanceOf(
    {
      id: 'valve_stem_clearance',
      label: 'valve stem clearance',
      of: 'valve_guide',
      dependsOn: ['valve'],
      description: 'Diametral clearance of a valve stem in its guide, by the sizes of both.',
      note: 'What a dial reads when the valve is rocked is more than this: write it as valve_rock.',
      family: VALVE,
      formula: 'valve guide bore − valve stem, or read directly',
      source: 'TM 9-6115-464-34, p. 1-15',
    },
    [
      {
        route: 'valve guide bore − valve stem',
        inputs: ['valve_guide_bore', 'valve_stem_diameter'],
        compute: ([guide, stem]) => guide && stem && clearance(guide, stem, []),
      },
    ],
    'other',
    [
      {
        unit: 'in',
        given: { valve_guide_bore: '0.3740', valve_stem_diameter: '0.3735' },
        least: '0.0005',
        greatest: '0.0005',
        source: 'TM 9-6115-464-34, p. 1-15: least intake clearance .0005',
      },
    ],
  ),
  read({
    id: 'valve_rock',
    isNeverBelowZero: true,
    label: 'valve rock',
    of: 'valve_guide',
    dependsOn: ['valve'],
    description:
      'Travel of the head of a valve that is lifted as far as the manual says and rocked from side to side, by a dial.',
    note: 'It reads more than the clearance, by how far the valve stands out, and has limits of its own: a manual that prints both has twice as much for the rock. Nothing is worked out from it.',
    family: VALVE,
    usual: 'dial indicator',
    words: { above: 'loose', below: 'tight' },
    formula: 'read directly: the full travel of the dial',
    source: 'service data of a car engine: clearance .020 to .045 mm by size, .04 to .09 mm by rock',
  }),
  readSize({
    id: 'valve_guide_height',
    label: 'valve guide height',
    of: 'valve_guide',
    description: 'How far a valve guide stands out of the head, on the side of the spring.',
    family: VALVE,
    usual: 'depth micrometer',
    words: { above: 'high', below: 'low' },
    source: 'common practice, no source',
  }),
  ...diameter({
    name: 'valve_guide_outside',
    label: 'valve guide outside',
    size: 'diameter',
    of: 'valve_guide',
    description: 'Diameter of a valve guide outside, where it is pressed into the head.',
    family: VALVE,
    usual: 'micrometer',
    taperBy: 'range',
    dimension: 'size',
    source: 'service data of a car engine: 11.023 to 11.034 mm, oversize 11.223 to 11.234 mm',
  }),
  ...diameter({
    name: 'valve_guide_hole',
    label: 'valve guide hole',
    size: 'bore',
    of: 'valve_guide_hole',
    description: 'Bore in the head that a valve guide is pressed into, the guide out.',
    family: VALVE,
    usual: 'bore gauge',
    taperBy: 'range',
    dimension: 'size',
    source: 'service data of a car engine: 10.975 to 10.996 mm, oversize 11.175 to 11.196 mm',
  }),
  clearanceOf(
    {
      id: 'valve_guide_fit',
      mayBePressed: true,
      label: 'valve guide fit',
      of: 'valve_guide',
      dependsOn: ['valve_guide_hole'],
      description: 'Fit of a valve guide in the head, before it is pressed in; a press fit is below zero.',
      note: 'Manuals print a press fit without its sign: .0011 to .0023 of press is written −0.0023 to −0.0011.',
      caution: PRESSED,
      family: VALVE,
      formula: 'valve guide hole − valve guide outside',
      source: 'service data of a car engine: press .027 to .059 mm',
    },
    [
      {
        route: 'valve guide hole − valve guide outside',
        inputs: ['valve_guide_hole_bore', 'valve_guide_outside_diameter'],
        compute: ([hole, guide]) => hole && guide && clearance(hole, guide, []),
      },
    ],
    'other',
    [
      {
        unit: 'mm',
        given: { valve_guide_hole_bore: '10.996', valve_guide_outside_diameter: '11.023' },
        least: '-0.027',
        greatest: '-0.027',
        source: 'service data of a car engine: least press .027 mm',
      },
    ],
  ),
  read({
    id: 'valve_margin',
    isNeverBelowZero: true,
    label: 'valve margin',
    of: 'valve',
    description: 'Thickness of the rim of a valve head between its face and its end, after grinding.',
    note: 'A thin rim overheats and burns: below its least it is not ground but renewed.',
    caution: SODIUM,
    family: VALVE,
    usual: 'caliper',
    figure: 'size',
    words: { above: 'thick', below: 'thin' },
    source: 'TM 9-6115-604-34, table 1-4: rim not below .105 in',
  }),
  read({
    id: 'valve_face_runout',
    isNeverBelowZero: true,
    label: 'valve face runout',
    of: 'valve',
    description: 'Full indicator reading on the face of a valve that turns on its stem.',
    caution: SODIUM,
    family: VALVE,
    usual: 'dial indicator',
    source: 'common practice, no source',
  }),
];
