import { familyOf } from '../../layout/family.ts';
import type { Value } from '../../measurement/value.ts';
import { parseDecimal } from '../../quantity/fraction.ts';
import type { Characteristic } from '../characteristic.ts';
import { read } from '../readFigure.ts';
import { FILLING } from './chambers.ts';
import { asVolume, compressionRatio, cylinderOf, meanOf, printedTo, totalOf } from './volume.ts';

const CYLINDER = familyOf('cylinder');

const RATIO_STEP = parseDecimal('0.01');

/** The volume over a piston, and how far it is compressed. */
export const volumes: readonly Characteristic[] = [
  read({
    id: 'gasket_volume',
    label: 'gasket volume',
    of: 'head_gasket',
    family: CYLINDER,
    quantity: 'volume',
    description: 'Volume in a hole of the head gasket.',
    usual: 'burette',
    formula: 'π/4 × gasket opening² × gasket thickness, or as its maker states it',
    derivations: [
      {
        route: 'π/4 × opening² × thickness',
        inputs: ['head_gasket_opening', 'head_gasket_thickness'],
        compute: ([bore, thickness]) => asVolume(cylinderOf(meanOf(bore), meanOf(thickness))),
      },
    ],
    words: { above: 'large', below: 'small' },
    onlyWithLimits: true,
    source: 'geometry',
    examples: [
      {
        unit: 'mm',
        resultUnit: 'cc',
        given: { head_gasket_opening: '87.5', head_gasket_thickness: '1.2' },
        least: '7.216',
        greatest: '7.216',
        source: 'worked by hand, invented readings',
      },
    ],
  }),
  read({
    id: 'deck_volume',
    label: 'deck volume',
    of: 'piston',
    dependsOn: ['cylinder', 'rod', 'crankpin', 'crankshaft', 'block'],
    isAssemblyFigure: true,
    family: CYLINDER,
    quantity: 'volume',
    description:
      'Volume between the flat of the crown at top dead centre and the deck; of a piston that stands proud it is below zero.',
    usual: 'burette',
    formula: 'π/4 × cylinder bore² × deck clearance, or read directly',
    derivations: [
      {
        route: 'π/4 × bore² × deck clearance',
        inputs: ['cylinder_bore', 'deck_clearance'],
        compute: ([bore, deck]) => asVolume(cylinderOf(meanOf(bore), meanOf(deck))),
      },
    ],
    words: { above: 'large', below: 'small' },
    caution: FILLING,
    onlyWithLimits: true,
    source: 'geometry',
    examples: [
      {
        unit: 'mm',
        resultUnit: 'cc',
        given: { cylinder_bore: '86', deck_clearance: '0.30' },
        least: '1.743',
        greatest: '1.743',
        source: 'worked by hand, invented readings',
      },
    ],
  }),
  read({
    id: 'clearance_volume',
    label: 'clearance volume',
    of: 'cylinder',
    dependsOn: ['head', 'valve', 'head_gasket', 'piston', 'rod', 'crankpin', 'crankshaft', 'block'],
    isAssemblyFigure: true,
    family: CYLINDER,
    quantity: 'volume',
    description: 'Volume over a piston at top dead centre.',
    usual: 'burette',
    formula: 'chamber + gasket + deck + crown (a dome below zero), or read directly through the plug hole',
    derivations: [
      {
        route: 'chamber + gasket + deck + crown',
        inputs: ['chamber_volume', 'gasket_volume', 'deck_volume', 'piston_crown_volume'],
        compute: (parts) => asVolume(totalOf(parts)),
      },
    ],
    words: { above: 'large', below: 'small' },
    caution: FILLING,
    onlyWithLimits: true,
    source: 'geometry',
    examples: [
      {
        unit: 'cc',
        given: { chamber_volume: '48', gasket_volume: '7.22', deck_volume: '1.74', piston_crown_volume: '5' },
        least: '61.96',
        greatest: '61.96',
        source: 'worked by hand, invented readings',
      },
    ],
  }),
  read({
    id: 'compression_ratio',
    label: 'compression ratio',
    of: 'cylinder',
    dependsOn: ['head', 'valve', 'head_gasket', 'piston', 'rod', 'crankpin', 'crankshaft', 'block'],
    isAssemblyFigure: true,
    family: CYLINDER,
    quantity: 'number',
    description: 'Volume over a piston at bottom dead centre by that at top dead centre.',
    usual: 'other',
    formula: '(swept volume + clearance volume) / clearance volume',
    derivations: [
      {
        route: '(swept + clearance) / clearance',
        inputs: ['swept_volume', 'clearance_volume'],
        compute: ([swept, clearance]) => ratio(meanOf(swept), meanOf(clearance)),
      },
    ],
    words: { above: 'high', below: 'low' },
    source: 'geometry',
    examples: [
      {
        unit: 'cc',
        resultUnit: '',
        given: { swept_volume: '499.557', clearance_volume: '61.9584' },
        least: '9.063',
        greatest: '9.063',
        source: 'worked by hand, invented readings',
      },
    ],
  }),
];

const ratio = (swept: Value | undefined, clearance: Value | undefined) =>
  printedTo(RATIO_STEP, swept && clearance && compressionRatio(swept, clearance));
