import { familyOf } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { relateOne } from '../../layout/relate.ts';
import { scaleValue, subtractValues, type Value } from '../../measurement/value.ts';
import { fraction } from '../../quantity/fraction.ts';
import type { Characteristic, InputPlace } from '../characteristic.ts';
import { type Grid, greatestOf, leastOf, type Measured, valuesOf } from '../grid.ts';
import { type ReadFigure, read } from '../readFigure.ts';
import { meanOf } from './volume.ts';

const CYLINDER = familyOf('cylinder');

type About = Pick<ReadFigure, 'source'>;

/** Of several points of one cylinder the greatest less the least. */
export const spreadAtOne = (of: Characteristic, about: About): Characteristic =>
  differenceOf(of, {
    id: `${of.id}_spread`,
    label: `${of.label} spread`,
    description: `Greatest less least ${of.label} of one cylinder, over the points that were read.`,
    formula: 'greatest of the points − least',
    derivations: [
      { route: 'greatest point − least', inputs: [of.id], compute: ([points]) => points && spread(points) },
    ],
    examples: [
      {
        unit: 'in',
        given: { [of.id]: { rows: [['0.0042'], ['0.0048'], ['0.0051'], ['0.0045']] } },
        least: '0.0009',
        greatest: '0.0009',
        source: 'worked by hand, invented readings',
      },
    ],
    ...about,
  });

/** How far the mean of a cylinder lies from those of the cylinders beside it, in its own bank. */
export const stepToNeighbours = (of: Characteristic, about: About): Characteristic =>
  differenceOf(of, {
    id: `${of.id}_step`,
    label: `${of.label} step`,
    description: `How far the mean ${of.label} of a cylinder lies from that of the one beside it, the farther of the two.`,
    formula: 'mean of its points − mean of those of the cylinder beside it, without a sign',
    derivations: [
      {
        route: 'its mean − its neighbour’s',
        inputs: [of.id],
        places: (layout, position) => withNeighbours(of.id, layout, position),
        compute: ([own, ...others]) => own && farthest(own, others),
      },
    ],
    examples: [
      {
        unit: 'in',
        given: { [of.id]: ['0.0044', '0.0050', '0.0031'] },
        least: '0.0013',
        greatest: '0.0013',
        source: 'worked by hand, invented readings: a cylinder and both beside it',
      },
    ],
    ...about,
  });

const differenceOf = (
  of: Characteristic,
  about: Omit<ReadFigure, 'of' | 'family' | 'usual'>,
): Characteristic =>
  read({
    of: of.of,
    dependsOn: of.dependsOn,
    family: CYLINDER,
    usual: of.usual,
    words: { above: 'uneven', below: 'even' },
    onlyWithLimits: true,
    ...(of.isAssemblyFigure === undefined ? {} : { isAssemblyFigure: of.isAssemblyFigure }),
    ...about,
  });

/** Itself first; none beside it is nothing to compare. */
function withNeighbours(id: string, layout: Layout, position: Position): readonly InputPlace[] | undefined {
  const bank = familyOf('bank');
  const row = layout
    .positionsOf(CYLINDER)
    .filter((each) => relateOne(layout, each, bank) === relateOne(layout, position, bank));
  const at = row.indexOf(position);
  const beside = [row[at - 1], row[at + 1]].flatMap((each) => each ?? []);
  return beside.length === 0 ? undefined : [position, ...beside].map((each) => ({ id, position: each }));
}

const spread = (points: Grid): Measured | undefined => {
  const values = valuesOf(points);
  const [least, greatest] = [leastOf(values), greatestOf(values)];
  if (values.length < 2 || least === undefined || greatest === undefined) return undefined;
  return alone(subtractValues(greatest, least));
};

function farthest(own: Grid, others: readonly Grid[]): Measured | undefined {
  const mean = meanOf(own);
  if (mean === undefined) return undefined;
  const steps = others.flatMap((other) => {
    const beside = meanOf(other);
    return beside === undefined ? [] : [unsigned(subtractValues(mean, beside))];
  });
  const worst = greatestOf(steps);
  return worst && alone(worst);
}

const unsigned = (value: Value): Value => (value.amount.n < 0n ? scaleValue(value, fraction(-1)) : value);

const alone = (value: Value): Measured => ({ least: value, mean: value, greatest: value });
