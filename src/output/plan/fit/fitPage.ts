import { classText } from '../../../documents/limits/choices.ts';
import { tableName } from '../../../layout/naming.ts';
import type { Fits } from '../../../plan/fit/fits.ts';
import type { FittedPlace, ShellFit } from '../../../plan/fit/shellFit.ts';
import type { FitProblem } from '../../../plan/fit/shellPlace.ts';
import { measureText, unreadHousings } from '../../../plan/order/toMeasure.ts';
import type { PlanContext } from '../../../plan/work/context.ts';
import { compare, type Fraction, subtract } from '../../../quantity/fraction.ts';
import { type Figures, figuresOf, wantedText } from '../figures.ts';
import { nameCell, type Page, type PageCell, type Section, type TableColumn, tableOf } from '../page.ts';
import { fitAnswer } from './fitAnswer.ts';
import { inPlaceLines } from './inPlaceLines.ts';
import { gasketSection, thicknessSection, washerSection } from './otherFitSections.ts';
import { notOfferedSections, wholeSection } from './partSections.ts';
import { pistonTable } from './pistonTable.ts';

/** The parts that are chosen from stock, as a page. */
export function fitPage(fits: Fits, context: PlanContext, about: readonly string[]): Page {
  const { engine } = context;
  const sections = [
    ...fits.wholes.map(wholeSection),
    ...fits.shells.map((each) => shellSection(each, context)),
    ...(fits.pistons === undefined ? [] : [pistonTable(fits.pistons, engine)]),
    ...(fits.washers === undefined ? [] : [washerSection(fits.washers, engine)]),
    ...(fits.gasket === undefined ? [] : [gasketSection(fits.gasket, engine)]),
    ...fits.thicknesses.map((each) => thicknessSection(each, engine)),
  ];
  const left = notOfferedSections(fits.notOffered);
  return {
    title: `${engine.document.name}: parts chosen from stock`,
    about,
    answer: fitAnswer(sections, fits),
    sections: [...sections, ...left],
    cautions: sections.length === 0 ? [] : CAUTIONS,
  };
}

const CAUTIONS: readonly string[] = [
  'Fit them, tighten as in the engine, and measure each clearance: a choice on paper is no reading.',
  'Rods stay with their caps, lobes with their lifters; used pistons go back to their own bores.',
];

function shellSection(fit: ShellFit, context: PlanContext): Section {
  const { engine } = context;
  const { part, clearance, places, inPlace, waitsFor } = fit;
  if (waitsFor !== undefined) {
    const first = waitsFor.family.isSingle
      ? `the ${waitsFor.label} is to be renewed: chosen when the new one is measured`
      : `the ${waitsFor.plural} are to be ground: chosen when they are back and measured`;
    const housings = measureText(unreadHousings(context, part));
    return {
      title: part.plural,
      lines: [first, ...(housings === undefined ? [] : [`until then ${housings}`])],
    };
  }
  const figures = figuresOf(engine);
  const wanted = places.find((each) => each.wanted !== undefined)?.wanted;
  const limits = wanted === undefined ? '' : `, ${wantedText(wanted, figures)}`;
  return {
    title: `${part.plural}: ${clearance.label}${limits}`,
    ...tableOf(
      SHELL_COLUMNS,
      places.map((place) => shellRow(place, figures)),
    ),
    lines: [...places.flatMap((place) => placeNotes(place, figures)), ...inPlaceLines(inPlace)],
  };
}

const SHELL_COLUMNS: readonly TableColumn[] = [
  { heading: '', key: 'position' },
  { heading: 'upper and lower', key: 'halves' },
  { heading: 'walls', key: 'walls' },
  { heading: 'clearance', key: 'clearance' },
  { heading: 'from aim', key: 'from_aim' },
];

function shellRow(
  { position, chosen, clearance, wanted }: FittedPlace,
  figures: Figures,
): readonly PageCell[] {
  const name = nameCell(position);
  if (chosen === undefined || clearance === undefined || wanted === undefined)
    return [name, { text: 'none', value: null }, '', '', ''];
  const { upper, lower } = chosen;
  const off = subtract(chosen.clearance, wanted.middle);
  const walls = [upper.wall, lower.wall].map(figures.value);
  return [
    name,
    {
      text: upper.code === lower.code ? `${upper.code}, both` : `${upper.code}, ${lower.code}`,
      value: { upper: upper.code, lower: lower.code },
    },
    {
      text:
        compare(upper.wall, lower.wall) === 0
          ? `${figures.number(upper.wall)} each`
          : `${figures.number(upper.wall)} + ${figures.number(lower.wall)}`,
      value: { upper: walls[0] ?? null, lower: walls[1] ?? null },
    },
    figures.rangeCell(clearance),
    { text: offText(off, figures), value: figures.value(off) },
  ];
}

function offText(off: Fraction, { distance }: Figures): string {
  const text = distance(off);
  return off.n === 0n ? 'on it' : `${off.n > 0n ? '+' : '−'}${text}`;
}

const placeNotes = (
  { position, table, problems, chosen }: FittedPlace,
  figures: Figures,
): readonly string[] => [
  ...problems.map((each) => `${tableName(position)}: ${problemText(each, figures)}`),
  ...(table?.classes !== undefined && chosen !== undefined && problems.length === 0
    ? [
        `${tableName(position)}: stamps ${table.housing} and ${table.journal} ask for ${classText(table.classes)}`,
      ]
    : []),
];

function problemText(problem: FitProblem, { number, unit, range }: Figures): string {
  switch (problem.kind) {
    case 'not measured':
      return `${problem.of.label} not measured: nothing can be chosen`;
    case 'no limits':
      return 'no limits of new parts on both sides: nothing to aim at';
    case 'to be renewed':
      return `waits until the new ${problem.part.label} is measured`;
    case 'nothing fits':
      return `nothing in stock brings it inside: halves of ${number(problem.wall)} ${unit.name} each would`;
    case 'too few':
      return 'shells that would do are in stock, and the other places take too many of them: get more';
    case 'class not in stock':
      return `the table asks for ${classText(problem.classes)}, of which no ${problem.classes.upper === problem.classes.lower ? 'two halves are' : 'pair is'} in stock: chosen by measured sizes`;
    case 'class taken':
      return `the table asks for ${classText(problem.classes)}, and the other places take what is in stock of it: chosen by measured sizes; to follow the table get more`;
    case 'table is outside':
      return `the table asks for ${classText(problem.classes)}, and by measured sizes that is outside: chosen by measured sizes; look at the stamps`;
    case 'not as stamped': {
      const [judged] = problem.row.routes;
      const read = judged === undefined ? '' : ` ${range(judged.least, judged.greatest)}`;
      return `${problem.of.label}${read} is not what its stamp ${problem.stamp} stands for`;
    }
  }
}
