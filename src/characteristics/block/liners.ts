import { familyOf } from '../../layout/family.ts';
import { addValues, meanValue } from '../../measurement/value.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { type Grid, type Measured, valuesOf } from '../grid.ts';
import { read, readSize } from '../readFigure.ts';
import { clearanceOf, diameter } from '../sizes.ts';
import { spreadAtOne, stepToNeighbours } from './neighbours.ts';

const CYLINDER = familyOf('cylinder');

const PRESSING =
  'A dry liner goes in under a press or with the liner chilled: eye protection, gloves against the cold, nobody in line with the press; chilled with dry ice or nitrogen only in moving air.';

/** Four points round the rim of a liner. */
const ROUND_THE_RIM = { stations: ['front', 'rear', 'left', 'right'], directions: [] };

const flangeThickness = readSize({
  id: 'liner_flange_thickness',
  label: 'liner flange thickness',
  of: 'cylinder',
  family: CYLINDER,
  usualGrid: ROUND_THE_RIM,
  description:
    'Thickness of the flange of a liner, from its seat to what the gasket lies on, at four points.',
  usual: 'micrometer',
  words: { above: 'thick', below: 'thin' },
  source: 'TM 5-6115-400-35: flange .4630 to .4650 in',
});

const counterboreDepth = readSize({
  id: 'counterbore_depth',
  label: 'counterbore depth',
  of: 'block',
  family: CYLINDER,
  usualGrid: ROUND_THE_RIM,
  description:
    'From the deck to the seat of the liner flange in the block, at four points, the shims in where there are any.',
  usual: 'depth micrometer',
  words: { above: 'deep', below: 'shallow' },
  source: 'TM 5-4320-300-14: .300 to .302 in, neighbours within .001',
});

const protrusion: Characteristic = read({
  id: 'liner_protrusion',
  label: 'liner protrusion',
  of: 'cylinder',
  dependsOn: ['block', 'spacer_plate'],
  isAssemblyFigure: true,
  family: CYLINDER,
  usualGrid: ROUND_THE_RIM,
  description:
    'How far the flange of a liner stands above the deck, clamped down, at four points: a dial on a bridge. Below the deck it is below zero.',
  usual: 'dial indicator',
  formula:
    'read directly, or liner flange − counterbore depth, or liner flange − spacer plate − its gasket; all points are judged',
  derivations: [
    {
      route: 'liner flange − counterbore',
      inputs: ['liner_flange_thickness', 'counterbore_depth'],
      compute: ([flange, depth]) => flange && depth && clearance(flange, depth, []),
    },
    {
      route: 'liner flange − spacer plate − gasket',
      inputs: ['liner_flange_thickness', 'spacer_plate_thickness', 'spacer_gasket_thickness'],
      compute: ([flange, plate, gasket]) => flange && plate && gasket && overPlate(flange, plate, gasket),
    },
  ],
  words: { above: 'proud', below: 'low' },
  source: 'TM 5-3805-263-14&P-2 and TM 9-2815-213-34, p. 94',
  examples: [
    {
      unit: 'in',
      given: { liner_flange_thickness: '0.403', counterbore_depth: '0.400' },
      least: '0.003',
      greatest: '0.003',
      source: 'TM 5-3810-206-35, p. 3-73: flange .403 to .405, counterbore .400 to .402',
    },
    {
      unit: 'in',
      given: {
        liner_flange_thickness: '0.4056',
        spacer_plate_thickness: '0.3915',
        spacer_gasket_thickness: '0.0072',
      },
      least: '0.0069',
      greatest: '0.0069',
      source: 'TM 5-3805-263-14&P-2: .4048 ± .0008, .3925 ± .0010, .0082 ± .0010, projection .0013 to .0069',
    },
  ],
});

/** The gasket under the plate lifts it as much as it is thick. */
function overPlate(flange: Grid, plate: Grid, gasket: Grid): Measured | undefined {
  const under = valuesOf(gasket);
  if (under.length === 0) return undefined;
  const thickness = meanValue(under);
  const lifted = plate.rows.map((row) => row.map((value) => value && addValues(value, thickness)));
  return clearance(flange, { ...plate, rows: lifted }, []);
}

const plate = (id: string, label: string, description: string): Characteristic =>
  readSize({
    id,
    label,
    of: 'spacer_plate',
    family: familyOf('bank'),
    description,
    usual: 'micrometer',
    words: { above: 'thick', below: 'thin' },
    source: 'TM 5-3805-263-14&P-2',
  });

interface Belt {
  readonly name: string;
  readonly label: string;
  readonly where: string;
}

/** A liner fits its block at belts of their own size, each with limits of its own. */
const fitAt = ({ name, label, where }: Belt): readonly Characteristic[] => [
  ...diameter({
    name: `liner_${name}_outside`,
    label: `liner ${label} outside`,
    size: 'diameter',
    of: 'cylinder',
    usualGrid: { stations: [], directions: ['along', 'across'] },
    description: `Diameter of a liner outside, ${where}.`,
    family: CYLINDER,
    usual: 'micrometer',
    taperBy: 'ends',
    source: 'TM 5-6115-400-35, table 1',
  }),
  ...diameter({
    name: `block_${name}`,
    label: `block ${label}`,
    size: 'bore',
    of: 'block',
    usualGrid: { stations: [], directions: ['along', 'across'] },
    description: `Bore in the block for a liner, ${where}.`,
    family: CYLINDER,
    usual: 'bore gauge',
    taperBy: 'ends',
    source: 'TM 5-6115-400-35, table 1',
  }),
  clearanceOf(
    {
      id: `liner_${name}_fit`,
      mayBePressed: true,
      label: `liner ${label} fit`,
      of: 'cylinder',
      dependsOn: ['block'],
      description: `Diametral fit of a liner in the block, ${where}, before it is put in; a press fit is below zero.`,
      family: CYLINDER,
      formula: 'bore of the block − liner outside',
      caution: PRESSING,
      source: 'TM 5-6115-400-35, table 1',
    },
    [
      {
        route: 'block bore − liner outside',
        inputs: [`block_${name}_bore`, `liner_${name}_outside_diameter`],
        compute: ([bore, liner]) => bore && liner && clearance(bore, liner, []),
      },
    ],
    'other',
    [
      {
        unit: 'in',
        given: { [`block_${name}_bore`]: '5.7810', [`liner_${name}_outside_diameter`]: '5.7800' },
        least: '0.0010',
        greatest: '0.0010',
        source: 'TM 5-6115-400-35, table 1: bore 5.7810 to 5.7830, liner 5.7780 to 5.7800, .001 to .005 in',
      },
    ],
  ),
];

/** Liners in the block: how they stand out and how they fit. */
export const liners: readonly Characteristic[] = [
  ...fitAt({ name: 'upper_belt', label: 'upper belt', where: 'at its upper belt, or all along a dry liner' }),
  ...fitAt({
    name: 'lower_belt',
    label: 'lower belt',
    where: 'at its lower belt, above or between the seals',
  }),
  ...fitAt({ name: 'flange', label: 'flange', where: 'round its flange' }),
  counterboreDepth,
  spreadAtOne(counterboreDepth, { source: 'TM 5-6115-593-34: four depths within .001 in' }),
  stepToNeighbours(counterboreDepth, { source: 'TM 5-4320-300-14: neighbours within .001 in' }),
  flangeThickness,
  plate(
    'spacer_plate_thickness',
    'spacer plate thickness',
    'Thickness of a plate between block and head that the liner flanges lie in.',
  ),
  plate(
    'spacer_gasket_thickness',
    'spacer gasket thickness',
    'Thickness of the gasket under a spacer plate, as it is when it is clamped.',
  ),
  protrusion,
  spreadAtOne(protrusion, { source: 'TM 5-3805-263-14&P-2: .002 in on one liner' }),
  stepToNeighbours(protrusion, { source: 'TM 5-3805-263-14&P-2: .002 in between the means of neighbours' }),
];
