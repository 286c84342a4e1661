import { type Family, familyOf } from '../../layout/family.ts';
import { scaleValue } from '../../measurement/value.ts';
import { fraction } from '../../quantity/fraction.ts';
import type { Characteristic } from '../characteristic.ts';
import { summary, valuesOf } from '../grid.ts';
import { type ReadFigure, read, readSize } from '../readFigure.ts';
import { TURNING } from '../turning.ts';

const [ENGINE, CYLINDER, CRANKPIN] = [familyOf('engine'), familyOf('cylinder'), familyOf('crankpin')];

const runout = (about: Pick<ReadFigure, 'id' | 'label' | 'of' | 'description'> & Partial<ReadFigure>) =>
  read({
    family: ENGINE,
    usual: 'dial indicator',
    formula: 'read directly: the full indicator reading',
    caution: TURNING,
    source: 'TM 9-6115-604-34: flywheel and housing',
    ...about,
  });

const END_PLAY_NOTE =
  'The end play of the crankshaft is taken up one way while it is turned, else it is read as well.';

/** A fillet is the radius between a journal and its cheek. */
const journalFinish = (name: string, label: string, family: Family): readonly Characteristic[] => [
  readSize({
    id: `${name}_fillet_radius`,
    label: `${label} fillet radius`,
    of: name,
    family,
    description: `Radius of the fillet beside a ${label}, by radius gauges or by two balls.`,
    usual: 'radius gauge',
    caution:
      'A fillet that is too small or has a step breaks the crankshaft: it is ground anew, never touched up by hand.',
    source: 'TM 5-4320-300-14 and TM 5-3895-346-14, p. 110: .130 to .160 in',
  }),
  read({
    id: `${name}_roughness`,
    label: `${label} roughness`,
    of: name,
    family,
    quantity: 'roughness',
    description: `Ra of a ${label}, along the shaft.`,
    note: 'Ra and rms of one surface differ: rms reads about a tenth more. Write in um or uin what the tester shows as Ra.',
    usual: 'roughness tester',
    words: { above: 'rough', below: 'smooth' },
    source: 'TM 5-4320-300-14: 8 to 12 rms',
  }),
  read({
    id: `${name}_hardness`,
    label: `${label} hardness`,
    of: name,
    family,
    quantity: 'number',
    description: `Hardness of a ${label}, on the scale that its limit names.`,
    note: 'Scales cannot be mixed: a hardness in Shore cannot be compared with one in Rockwell. State the scale in `source:` of the limits.',
    usual: 'hardness tester',
    words: { above: 'hard', below: 'soft' },
    source: 'service data of a diesel engine: Shore 74 to 84 new, 60 on two thirds of the turn',
  }),
];

/** How a crankshaft and what turns with it run, and how its journals are finished. */
export const crankShape: readonly Characteristic[] = [
  runout({
    id: 'crankshaft_flange_runout',
    label: 'crankshaft flange runout',
    of: 'crankshaft',
    description: 'Full indicator reading on the face of the flange, near its edge.',
    note: END_PLAY_NOTE,
    source: 'common practice, no source',
  }),
  runout({
    id: 'crankshaft_pilot_runout',
    label: 'crankshaft pilot runout',
    of: 'crankshaft',
    description: 'Full indicator reading on the spigot or in the pilot bore of the flange.',
    source: 'common practice, no source',
  }),
  runout({
    id: 'flywheel_face_runout',
    label: 'flywheel face runout',
    of: 'flywheel',
    dependsOn: ['crankshaft'],
    isAssemblyFigure: true,
    description: 'Full indicator reading on the face of the bolted flywheel, near its edge.',
    note: `${END_PLAY_NOTE} A limit per inch of radius is multiplied by the radius of the dial.`,
    source: 'TM 9-6115-604-34: .0005 in per inch of radius',
  }),
  runout({
    id: 'flywheel_bore_runout',
    label: 'flywheel bore runout',
    of: 'flywheel',
    dependsOn: ['crankshaft'],
    isAssemblyFigure: true,
    description: 'Full indicator reading in the bore of the bolted flywheel.',
    source: 'TM 9-6115-604-34: .005 in',
  }),
  runout({
    id: 'flywheel_housing_bore_runout',
    label: 'flywheel housing bore runout',
    of: 'flywheel_housing',
    dependsOn: ['block', 'crankshaft'],
    isAssemblyFigure: true,
    description: 'Full indicator reading in the bore of the flywheel housing, the dial on the crankshaft.',
  }),
  runout({
    id: 'flywheel_housing_face_runout',
    label: 'flywheel housing face runout',
    of: 'flywheel_housing',
    dependsOn: ['block', 'crankshaft'],
    isAssemblyFigure: true,
    description: 'Full indicator reading on the face of the flywheel housing, the dial on the crankshaft.',
    note: END_PLAY_NOTE,
    source: 'TM 5-3895-383-24, p. 5-40: .30 mm, four readings at 90 degrees',
  }),
  runout({
    id: 'damper_runout',
    label: 'damper runout',
    of: 'damper',
    dependsOn: ['crankshaft'],
    isAssemblyFigure: true,
    description: 'Full indicator reading on the rim of the bolted damper or pulley.',
    source: 'common practice, no source',
  }),
  ...journalFinish('main_journal', 'main journal', familyOf('main')),
  ...journalFinish('crankpin', 'crankpin', CRANKPIN),
  readSize({
    id: 'crank_throw',
    label: 'crank throw',
    of: 'crankpin',
    dependsOn: ['crankshaft'],
    family: CRANKPIN,
    description: 'From the axis of the main journals to that of a crankpin, the crankshaft in blocks.',
    usual: 'height gauge',
    words: { above: 'long', below: 'short' },
    source: 'common practice, no source',
  }),
  readSize({
    id: 'piston_travel',
    label: 'piston travel',
    of: 'crankpin',
    dependsOn: ['crankshaft', 'rod', 'piston'],
    family: CYLINDER,
    description:
      'How far the crown of a piston moves from top to bottom: below the deck at the bottom less at the top.',
    usual: 'depth micrometer',
    words: { above: 'long', below: 'short' },
    caution: TURNING,
    source: 'common practice, no source',
  }),
  read({
    id: 'crank_stroke',
    label: 'crank stroke',
    of: 'crankpin',
    dependsOn: ['crankshaft', 'rod', 'piston'],
    family: CYLINDER,
    description: 'Stroke that a crankpin gives its piston.',
    note: 'A piston whose pin is set to one side travels a little more than twice the throw.',
    usual: 'height gauge',
    formula: '2 × crank throw, or the travel of the piston',
    derivations: [
      {
        route: '2 × crank throw',
        inputs: ['crank_throw'],
        compute: ([thrown]) =>
          thrown && summary(valuesOf(thrown).map((value) => scaleValue(value, fraction(2)))),
      },
      {
        route: 'piston travel',
        inputs: ['piston_travel'],
        compute: ([travel]) => travel && summary(valuesOf(travel)),
      },
    ],
    words: { above: 'long', below: 'short' },
    onlyWithLimits: true,
    source: 'geometry',
    examples: [
      {
        unit: 'in',
        given: { crank_throw: '2.7000' },
        least: '5.4000',
        greatest: '5.4000',
        source: 'worked by hand, invented readings',
      },
      {
        unit: 'mm',
        given: { piston_travel: '92.02' },
        least: '92.02',
        greatest: '92.02',
        source: 'worked by hand, invented readings',
      },
    ],
  }),
];
