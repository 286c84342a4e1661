import { characteristics } from '../characteristics/registry.ts';
import type { Schema } from '../documents/schema/scalars.ts';

/** One key that a document may hold, at whatever depth. */
export interface DocumentKey {
  readonly path: string;
  readonly description: string;
  readonly example: unknown;
  readonly required: boolean;
}

/**
 * Every key below a node in the order of its schema, those of maps and lists inside it after their own. What it only
 * refers to is left out: a definition is shown once, for itself.
 */
export function keysOf(schema: Schema): readonly DocumentKey[] {
  const keys = new Map<string, DocumentKey>();
  const visit = (node: Schema, path: string): void => {
    for (const part of partsOf(node)) {
      const inner = join(path, part.name);
      if (isReported(part.schema) && !keys.has(inner)) keys.set(inner, keyOf(part, inner, node));
      visit(part.schema, inner);
    }
    for (const branch of branchesOf(node)) visit(branch, path);
  };
  visit(schema, '');
  return [...keys.values()];
}

export const definitionsOf = (schema: Schema): Readonly<Record<string, Schema>> =>
  mapAt(schema, 'definitions');

interface Part {
  readonly name: string;
  readonly schema: Schema;
}

const join = (path: string, name: string): string =>
  path === '' ? name : name === '[]' ? `${path}[]` : `${path}.${name}`;

const isReported = (schema: Schema): boolean => typeof schema.description === 'string';

/** What stands below a node: its keys, those that the user names, its items. */
const partsOf = (node: Schema): readonly Part[] => [
  ...Object.entries(mapAt(node, 'properties'))
    .filter(([name, schema]) => !isOfferedOnly(name, schema))
    .map(([name, schema]) => ({ name, schema })),
  ...Object.values(mapAt(node, 'patternProperties')).map((schema) => ({ name: placeholder(node), schema })),
  ...schemaAt(node, 'additionalProperties').map((schema) => ({ name: '<name>', schema })),
  ...schemaAt(node, 'items').map((schema) => ({ name: '[]', schema })),
];

/** Ids are offered by name in the schemas, to be completed by an editor; the page of characteristics lists them. */
const isOfferedOnly = (name: string, schema: Schema): boolean =>
  Object.keys(schema).every((key) => key === 'title' || key === 'description') &&
  (IDS.has(name) || PARTS.has(name));

const IDS: ReadonlySet<string> = new Set(characteristics.map(({ id }) => id));
const PARTS: ReadonlySet<string> = new Set(
  [...IDS].flatMap((id) => /^(.+)_(?:diameter|bore)$/.exec(id)?.[1] ?? []),
);

function placeholder(node: Schema): string {
  const names = Object.keys(mapAt(node, 'properties'));
  if (names.some((name) => IDS.has(name))) return '<characteristic>';
  return names.includes('main_journal') ? '<part>' : '<name>';
}

/** A measurement is the rule and stands in `else`; `then` is the exception, so it comes last. */
const branchesOf = (node: Schema): readonly Schema[] =>
  [node.anyOf, node.allOf, node.else, node.then].flat().filter(isSchema);

function keyOf({ name, schema }: Part, path: string, parent: Schema): DocumentKey {
  const { examples } = schema;
  return {
    path,
    // The example has its own column.
    description: String(schema.description).replace(/ Example: .*$/s, ''),
    example: Array.isArray(examples) ? examples[0] : undefined,
    required: Array.isArray(parent.required) && parent.required.includes(name),
  };
}

const isSchema = (value: unknown): value is Schema =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const schemaAt = (node: Schema, key: string): readonly Schema[] => [node[key]].filter(isSchema);

function mapAt(node: Schema, key: string): Readonly<Record<string, Schema>> {
  const map = node[key];
  return isSchema(map)
    ? Object.fromEntries(
        Object.entries(map).flatMap(([name, each]) => (isSchema(each) ? [[name, each]] : [])),
      )
    : {};
}
