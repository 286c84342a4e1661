import type { Characteristic, ExampleReading, WorkedExample } from '../characteristics/characteristic.ts';
import { parts } from '../characteristics/parts.ts';
import { characteristics } from '../characteristics/registry.ts';
import { ALSO_CALLED } from '../documents/alsoCalled.ts';
import { allOf } from '../layout/naming.ts';
import { anInstrument } from '../measurement/instrument.ts';

/** docs/characteristics.md: every characteristic of the registry, in the order of the sheet. */
export const characteristicsReference = (): string =>
  [INTRODUCTION, ...characteristics.map(sectionOf)].join('\n');

const INTRODUCTION = `# What can be measured

Made from the registry in \`src/characteristics/\`: change it there.

Use each of these after \`measure:\` in a session and as a key under \`limits:\`. A shop adds its own under
\`characteristics:\` in a shop or limits document. Diameters, clearances, tapers and out of round are full differences of
diameters, never of radii.
`;

function sectionOf(each: Characteristic): string {
  return [
    `## ${each.id}`,
    '',
    `${each.description}`,
    '',
    ...(each.note === undefined ? [] : [each.note, '']),
    ...(each.caution === undefined ? [] : [`**Caution:** ${each.caution}`, '']),
    ...(ALSO_CALLED[each.id] === undefined ? [] : [`- Also called: ${ALSO_CALLED[each.id]?.join(', ')}`]),
    `- Positions: ${positionsText(each)}; it is a ${each.quantity}`,
    `- How: ${each.formula}`,
    `- Of the ${partsText(each)}`,
    ...(each.derivations.length === 0 ? [] : [`- Worked out from: ${inputsOf(each)}`]),
    `- Usually measured with ${anInstrument(each.usual)}; that is assumed where a reading names no registered instrument`,
    `- Past a limit it is called ${each.words.above} (above) or ${each.words.below} (below)`,
    ...(each.under === undefined ? [] : [`- To be stated under \`conditions:\`: ${each.under.join(', ')}`]),
    ...(each.onlyWithLimits === true ? ['- Shown only where a limit asks for it'] : []),
    `- Source: ${each.source}`,
    ...each.examples.map((example) => `- Example: ${exampleText(example)}`),
    '',
  ].join('\n');
}

/** What work, a new part or a regrind changes it. */
function partsText({ of, dependsOn }: Characteristic): string {
  const [own, ...others] = [...(of === undefined ? [] : [of]), ...dependsOn].map(
    (id) => parts.find((part) => part.id === id)?.label ?? id,
  );
  return others.length === 0 ? `${own}` : `${own}; changes with the ${others.join(', ')} as well`;
}

const positionsText = ({ family }: Characteristic): string =>
  family.writtenUnder === 'at' ? allOf(family) : `${allOf(family)}, as \`${family.writtenUnder}:\``;

const inputsOf = ({ derivations }: Characteristic): string =>
  derivations.map(({ inputs }) => inputs.map((id) => `\`${id}\``).join(' and ')).join('; or ');

function exampleText({ given, unit, resultUnit, least, greatest, source }: WorkedExample): string {
  const readings = Object.entries(given).map(([id, reading]) => `${spoken(id)} ${readingText(reading)}`);
  const result = least === greatest ? least : `${least} to ${greatest}`;
  const inUnit = resultUnit === undefined ? '' : ` ${resultUnit}`;
  return `${readings.join(', ')}${unit === '' ? '' : ` ${unit}`} give ${result}${resultUnit === undefined ? ` ${unit}` : inUnit} (${source})`;
}

const spoken = (id: string): string => id.replaceAll('_', ' ');

function readingText(reading: ExampleReading): string {
  if (typeof reading === 'string') return reading;
  return 'rows' in reading
    ? reading.rows.map((row) => row.join(' and ')).join(', then ')
    : reading.join(', ');
}
