import { characteristics } from '../characteristics/registry.ts';
import { KINDS } from '../documents/schema/kinds.ts';
import type { Schema } from '../documents/schema/scalars.ts';
import { buildSchemas } from '../documents/schema/schemas.ts';
import { inFlow } from '../documents/writing/inFlow.ts';
import { type DocumentKey, definitionsOf, keysOf } from './documentKeys.ts';

/** docs/documents.md: every key of every kind of document, from the schemas. */
export function documentsReference(): string {
  const schemas = buildSchemas(characteristics);
  const sections = KINDS.map((kind) => kindSection(kind, schemas[kind]));
  return [INTRODUCTION, headSection(schemas.shop), ...sections].join('\n');
}

const INTRODUCTION = `# The documents

Made from the schemas in \`src/documents/schema/\`: change it there.

A document is a YAML file that says what it is with \`kind:\`; its name and its folder are yours to choose. In the tables
a key in **bold** must be there where its map is; \`[]\` stands for each item of a list, and \`<name>\` for a name of yours,
such as a position or an instrument. \`<characteristic>\` is an id of [characteristics.md](characteristics.md) or one that
the shop adds, and \`<part>\` is such an id without its last word: \`main_journal\`, \`cylinder\`.

- A plain number is in the units of its document, else of its engine, else of the nearest shop document; with none of
  them it is an error. Any amount may carry its own unit: \`0.0635 mm\`, \`2.5 thou\`, \`95 N m\`.
- The digits that you type stay in the file. In the examples below zeros at the end are left out.
- A list of readings must be named along what it was taken: \`stations\` (along the part) or \`directions\` (round it) in
  the block, or once for all under \`grids\` in the shop document. Several readings of one point are
  \`{ repeat: [3.2478, 3.2477] }\`.
- Each item of \`readings\` is either a measurement (\`measure\`) or work that was done (\`work\` and \`on\`).
- \`~\` is a reading that was not taken. With a note that says why, \`{ value: ~, note: bore plugged }\`, it is left out on
  purpose and not missing; the note of a block in which nothing was read says it for all of the block.
`;

/** Keys that every document may have are reported once. */
const HEAD = /^(?:kind|version|units|note)\b/;

const headSection = (anyDocument: Schema): string =>
  sectionText(
    '## Every document',
    undefined,
    keysOf(anyDocument).filter(({ path }) => HEAD.test(path)),
  );

function kindSection(kind: string, schema: Schema): string {
  const keys = keysOf(schema).filter(({ path }) => !HEAD.test(path));
  const definitions = Object.entries(definitionsOf(schema)).flatMap(([name, each]) => {
    const heading = DEFINED[name];
    return heading === undefined ? [] : [sectionText(`### ${heading}`, undefined, keysOf(each))];
  });
  return [sectionText(`## ${kind}`, schema.description, keys), ...definitions].join('\n');
}

/** What documents say in several places; definitions that no one writes as they are stay out. */
const DEFINED: Readonly<Record<string, string>> = {
  band: 'A band: `0.0020 to 0.0038`, or a map of',
  bandsOnly: 'Bands alone: what a size grade holds',
  position: 'What was read at a position: a number, a range, a list, or a map of',
};

function sectionText(heading: string, description: unknown, keys: readonly DocumentKey[]): string {
  return [
    heading,
    '',
    ...(description === undefined ? [] : [String(description), '']),
    '| key | what it is | for example |',
    '|---|---|---|',
    ...keys.map(rowOf),
    '',
  ].join('\n');
}

function rowOf({ path, description, example, required }: DocumentKey): string {
  const key = required ? `**\`${path}\`**` : `\`${path}\``;
  const shown = example === undefined ? '' : `\`${inFlow(example)}\``;
  return `| ${key} | ${cell(description)} | ${cell(shown)} |`;
}

const cell = (text: string): string => text.replaceAll('|', '\\|');
