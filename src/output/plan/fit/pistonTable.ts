import type { Engine } from '../../../documents/assemble.ts';
import type { Position } from '../../../layout/position.ts';
import type { PistonFit } from '../../../plan/fit/pistonChoice.ts';
import { placesText } from '../../../plan/work/placesText.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { compare, type Fraction, subtract } from '../../../quantity/fraction.ts';
import { unitNamed } from '../../../quantity/units.ts';
import { numberIn } from '../../check/rowJson.ts';
import { figuresOf, wantedText } from '../figures.ts';
import { nameCell, type PageCell, type Section, tableOf } from '../page.ts';
import { inPlaceLines } from './inPlaceLines.ts';
import { pistonProblemLines } from './pistonProblemLines.ts';

/** Which piston for which bore; of bores that are still to be bored what each is finished to. */
export function pistonTable(
  { clearance, places, inPlace, isToBeBored, toBeRenewed, problem }: PistonFit,
  engine: Engine,
): Section {
  const figures = figuresOf(engine);
  const [first] = places;
  const limits = first === undefined ? '' : `, ${wantedText(first.wanted, figures)}`;
  const weights = places.flatMap(({ piston }) => piston.weight ?? []);
  return {
    title: `pistons: ${clearance.label}${limits}`,
    ...tableOf(
      [
        { heading: '', key: 'position' },
        { heading: 'piston', key: 'piston' },
        { heading: 'diameter', key: 'diameter' },
        isToBeBored ? { heading: 'finish bore to', key: 'finish_bore_to' } : { heading: 'bore', key: 'bore' },
        { heading: 'clearance', key: 'clearance' },
        { heading: 'weight', key: 'weight_g', align: 'right' },
      ],
      places.map(({ position, piston, size, least, greatest }) => [
        nameCell(position),
        piston.mark,
        figures.cell(piston.diameter),
        figures.cell(size),
        figures.rangeCell({ least, greatest }),
        weightCell(piston.weight),
      ]),
    ),
    lines: [
      ...(problem === undefined ? [] : pistonProblemLines(problem, engine)),
      ...renewalText(toBeRenewed, engine),
      ...(isToBeBored && places.length > 0
        ? ['the bores are still to be bored: each is finished to its own piston, and both are marked']
        : []),
      ...places.flatMap(({ piston: { mark, lies } }) =>
        lies === undefined ? [] : [`${mark} lies: ${lies}`],
      ),
      ...(weights.length === places.length || places.length === 0 ? [] : ['not every piston was weighed']),
      ...spreadText(weights),
      ...inPlaceLines(inPlace),
    ],
  };
}

function renewalText(bores: readonly Position[], { document: { layout } }: Engine): readonly string[] {
  const [first] = bores;
  if (first === undefined) return [];
  const [s, is, measured] = bores.length === 1 ? ['', 'is', 'one'] : ['s', 'are', 'ones'];
  return [
    `${first.family.name}${s} ${placesText(bores, layout)} ${is} to be renewed: measure the new ${measured}, and say \`replaced:\` in that session`,
  ];
}

const weightCell = (weight: Fraction | undefined): PageCell =>
  weight === undefined
    ? ''
    : {
        text: `${formatNumber(weight, unitNamed('g'), 0)} g`,
        value: numberIn(weight, unitNamed('g')),
      };

function spreadText(weights: readonly Fraction[]): readonly string[] {
  const sorted = [...weights].sort(compare);
  const [least, greatest] = [sorted[0], sorted.at(-1)];
  if (least === undefined || greatest === undefined || sorted.length < 2) return [];
  return [`heaviest and lightest differ by ${formatNumber(subtract(greatest, least), unitNamed('g'), 1)} g`];
}
