import { isNeverBelowZero } from '../characteristics/belowZero.ts';
import type {
  Characteristic,
  Derivation,
  ExampleReading,
  UsualGrid,
  WorkedExample,
} from '../characteristics/characteristic.ts';
import { characteristics } from '../characteristics/registry.ts';
import { ALSO_CALLED } from '../documents/alsoCalled.ts';
import { allOf } from '../layout/naming.ts';
import { anInstrument } from '../measurement/instrument.ts';
import { toNumber } from '../quantity/fraction.ts';
import { withArticle } from '../quantity/words.ts';
import { partNamed, partsTable } from './partsTable.ts';

/** docs/characteristics.md: every characteristic of the registry, in the order of the sheet. */
export const characteristicsReference = (): string =>
  [INTRODUCTION, ...characteristics.map(sectionOf), ...partsTable, ''].join('\n');

const INTRODUCTION = `# What can be measured

Made from the registry in \`src/characteristics/\`: change it there.

Use each of these after \`measure:\` in a session and as a key under \`limits:\`. A shop adds its own under
\`characteristics:\` in a shop or limits document. Diameters, clearances, tapers and out of round are full differences of
diameters, never of radii. The parts, and the words that they go by, stand [at the end](#parts).
`;

function sectionOf(each: Characteristic): string {
  return [
    `## ${each.id}`,
    '',
    `${each.description}`,
    '',
    ...(each.note === undefined ? [] : [each.note, '']),
    ...(each.caution === undefined ? [] : [`**Caution:** ${each.caution}`, '']),
    ...(each.label === spoken(each.id) ? [] : [`- In words: ${each.label}`]),
    ...(ALSO_CALLED[each.id] === undefined ? [] : [`- Also called: ${ALSO_CALLED[each.id]?.join(', ')}`]),
    `- Positions: ${positionsText(each)}; it is ${withArticle(each.quantity)}${figureText(each)}`,
    `- How: ${each.formula}`,
    ...readingLines(each),
    `- Of the ${partsText(each)}`,
    ...each.derivations.map((derivation) => `- Worked out from: ${inputsOf(derivation)}`),
    `- Usually measured with ${anInstrument(each.usual)}; that is assumed where a reading names no registered instrument`,
    `- Past a limit it is called ${each.words.above} (above) or ${each.words.below} (below)`,
    ...(each.under === undefined ? [] : [`- To be stated under \`conditions:\`: ${each.under.join(', ')}`]),
    ...behaviourLines(each),
    ...(each.onlyWithLimits === true ? ['- Shown only where a limit asks for it'] : []),
    `- Source: ${each.source}`,
    ...each.examples.map((example) => `- Example: ${exampleText(example)}`),
    '',
  ].join('\n');
}

const figureText = ({ figure }: Characteristic): string =>
  figure === undefined || figure === 'other' ? '' : ` (${figure})`;

/** Over which points it is read, and what is written for a test. */
function readingLines({
  grid,
  usualGrid,
  halves,
  atTheBench,
  outcomes,
  after,
}: Characteristic): readonly string[] {
  return [
    ...(halves === true ? ['- Two figures at a position are its upper and its lower half'] : []),
    ...(usualGrid === undefined ? [] : [`- Usual points: ${pointsText(usualGrid)}`]),
    ...(grid === undefined ? [] : [`- Under \`grids:\` as \`${grid}\``]),
    ...(atTheBench === undefined ? [] : [`- At the bench: ${atTheBench}`]),
    ...(outcomes === undefined ? [] : [`- Written as ${outcomes.pass} or ${outcomes.fail}`]),
    ...(after === undefined ? [] : [`- Read after \`${after}\``]),
  ];
}

const pointsText = ({ stations, directions }: UsualGrid): string =>
  [stations.join(', '), directions.join(', ')].filter(Boolean).join('; each ');

/** What it does when its part changes. */
function behaviourLines(each: Characteristic): readonly string[] {
  const { nominal, dimension, expandsWith, cycle } = each;
  return [
    ...(nominal === undefined ? [] : [`- Its nominal size is \`${nominal}\` of the engine document`]),
    ...(dimension === undefined
      ? []
      : [`- A service size of its part moves it, as ${withArticle(dimension)}`]),
    ...(expandsWith === undefined ? [] : [`- Expands with the ${partNamed(expandsWith)}`]),
    ...(each.isAssemblyFigure === true ? ['- Holds until its parts are taken apart'] : []),
    ...belowZeroLines(each),
    ...(cycle === undefined ? [] : [`- Comes round again after ${toNumber(cycle)} degrees`]),
  ];
}

const belowZeroLines = (each: Characteristic): readonly string[] =>
  each.mayBePressed === true
    ? ['- Below zero where its parts are pressed together']
    : isNeverBelowZero(each)
      ? ['- Never below zero']
      : [];

/** What work, a new part or a regrind changes it. */
function partsText({ of, dependsOn }: Characteristic): string {
  const [own, ...others] = [...(of === undefined ? [] : [of]), ...dependsOn].map(partNamed);
  return others.length === 0 ? `${own}` : `${own}; changes with the ${others.join(', ')} as well`;
}

const positionsText = ({ family }: Characteristic): string =>
  family.writtenUnder === 'at' ? allOf(family) : `${allOf(family)}, as \`${family.writtenUnder}:\``;

const inputsOf = ({ inputs, route }: Derivation): string =>
  `${inputs.map((id) => `\`${id}\``).join(' and ')} (${route})`;

function exampleText({ given, unit, resultUnit, least, greatest, source }: WorkedExample): string {
  const readings = Object.entries(given).map(([id, reading]) => `${spoken(id)} ${readingText(reading)}`);
  const result = least === greatest ? least : `${least} to ${greatest}`;
  const inUnit = resultUnit === undefined ? '' : ` ${resultUnit}`;
  return `${readings.join(', ')}${unit === '' ? '' : ` ${unit}`} give ${result}${resultUnit === undefined ? ` ${unit}` : inUnit} (${source})`;
}

const spoken = (id: string): string => id.replaceAll('_', ' ');

function readingText(reading: ExampleReading): string {
  if (typeof reading === 'string') return reading;
  if (!('rows' in reading)) return reading.join(', ');
  const { rows, stations = [], directions = [] } = reading;
  const where = pointsText({ stations, directions });
  const figures = rows.map((row) => row.join(' and ')).join(', then ');
  return where === '' ? figures : `${figures} (${where})`;
}
