import { familyOf } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { unitNamed } from '../../quantity/units.ts';
import type { Characteristic, Derivation, InputPlace } from '../characteristic.ts';
import { read } from '../readFigure.ts';
import { asVolume, cylinderOf, meanOf, totalOf } from './volume.ts';

const [CYLINDER, ENGINE] = [familyOf('cylinder'), familyOf('engine')];

/** How far a crankshaft may be off the stroke that it was drawn with: our judgement, no source. A measured one is nearer. */
const AS_DRAWN = new Map([
  [
    'stroke as drawn',
    { u: (0.1 * toNumber(unitNamed('mm').factor)) / Math.sqrt(3), dof: Number.POSITIVE_INFINITY },
  ],
]);

/** Few measure a stroke that the drawing gives. */
function nominalStroke(): Derivation {
  return {
    route: 'π/4 × bore² × stroke as drawn',
    inputs: ['cylinder_bore'],
    places: (_, position) => [{ id: 'cylinder_bore', position }],
    compute: ([bore], { sizes }) => {
      const stroke = sizes?.get('stroke');
      return stroke && asVolume(cylinderOf(meanOf(bore), { amount: stroke, terms: AS_DRAWN }));
    },
  };
}

/** All of them or none: a sum that lacks one is no displacement. */
const everyCylinder = (id: string, layout: Layout): readonly InputPlace[] | undefined => {
  const all = layout.positionsOf(CYLINDER);
  return all.length === 0 ? undefined : all.map((position) => ({ id, position }));
};

/** What the pistons sweep. */
export const displacement: readonly Characteristic[] = [
  read({
    id: 'swept_volume',
    label: 'swept volume',
    of: 'cylinder',
    dependsOn: ['crankpin', 'crankshaft', 'piston', 'rod'],
    family: CYLINDER,
    quantity: 'volume',
    description: 'Volume that a piston sweeps from bottom to top.',
    usual: 'other',
    formula: 'π/4 × cylinder bore² × stroke, the stroke as measured, else as the engine document gives it',
    derivations: [
      {
        route: 'π/4 × bore² × stroke',
        inputs: ['cylinder_bore', 'crank_stroke'],
        compute: ([bore, stroke]) => asVolume(cylinderOf(meanOf(bore), meanOf(stroke))),
      },
      nominalStroke(),
    ],
    words: { above: 'large', below: 'small' },
    onlyWithLimits: true,
    source: 'geometry',
    examples: [
      {
        unit: 'in',
        resultUnit: 'in3',
        given: { cylinder_bore: '5.5', crank_stroke: '5.4' },
        least: '128.295',
        greatest: '128.295',
        source: 'a general handbook of the FAA for airframe and powerplant mechanics: 128.29 in³, cut off',
      },
    ],
  }),
  read({
    id: 'displacement',
    label: 'displacement',
    of: 'block',
    dependsOn: ['cylinder', 'crankpin', 'crankshaft', 'piston', 'rod'],
    family: ENGINE,
    quantity: 'volume',
    description: 'Swept volume of all cylinders together.',
    usual: 'other',
    formula: 'sum of the swept volumes of all cylinders',
    derivations: [
      {
        route: 'sum of the swept volumes',
        inputs: ['swept_volume'],
        places: (layout) => everyCylinder('swept_volume', layout),
        compute: (swept) => asVolume(totalOf(swept)),
      },
    ],
    words: { above: 'large', below: 'small' },
    onlyWithLimits: true,
    source: 'geometry',
    examples: [
      {
        unit: 'in3',
        given: { swept_volume: '128.295' },
        least: '128.295',
        greatest: '128.295',
        source: 'an engine of one cylinder',
      },
    ],
  }),
];
