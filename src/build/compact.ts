import type { Schema } from '../documents/schema/scalars.ts';

/** The name under which the shapes that several places share are known. */
export const SHARED = 'shared';

export interface Compacted {
  /** Holds definitions alone. */
  readonly shared: Schema;
  readonly documents: readonly Schema[];
}

/**
 * Schemas for the machine: without the words for editors, and with each shape said once.
 *
 * A published schema repeats a length's shape at every key that is a length, since each has a title of its own.
 * In a validator that is the same code a hundred times (1.4 MB, read at every start), so each shape becomes one
 * definition of a shared schema, and one function.
 */
export function compact(schemas: readonly Schema[]): Compacted {
  const names = new Map<string, string>();
  const definitions: Record<string, Schema> = {};
  const documents = schemas.map((document) => compactDocument(document, nameOf));
  return { shared: { definitions }, documents };

  function nameOf(shape: Schema): string {
    const text = JSON.stringify(shape);
    const name = names.get(text) ?? `s${names.size}`;
    names.set(text, name);
    definitions[name] = shape;
    return name;
  }
}

/** References are followed first: none of ours leads back to itself. */
function compactDocument(document: Schema, nameOf: (shape: Schema) => string): Schema {
  const { definitions, ...root } = document;
  return overChildren(withoutWords(root), share);

  function share(schema: Schema, example: unknown): Schema {
    const shape = overChildren(withoutWords(followed(schema, definitions)), share);
    if (Object.keys(shape).every((keyword) => keyword === 'required')) return shape;
    const reference = { $ref: `${SHARED}#/definitions/${nameOf(shape)}` };
    return example === undefined ? reference : { examples: [example], ...reference };
  }
}

function followed(schema: Schema, definitions: unknown): Schema {
  const target = Array.isArray(schema.allOf) && schema.allOf.length === 1 ? schema.allOf[0] : schema;
  if (!isSchema(target) || typeof target.$ref !== 'string' || !isSchema(definitions)) return schema;
  const found = definitions[target.$ref.replace('#/definitions/', '')];
  return isSchema(found) ? followed(found, definitions) : schema;
}

function withoutWords(schema: Schema): Schema {
  const {
    title: _title,
    description: _description,
    examples: _examples,
    enumDescriptions: _told,
    ...rest
  } = schema;
  return rest;
}

/** Gives each schema directly inside this one to `change`, with an example where a key is required. */
function overChildren(schema: Schema, change: Change): Schema {
  const required = Array.isArray(schema.required) ? schema.required : [];
  return mapEntries(schema, (keyword, value) => {
    if (keyword === 'properties' && isSchema(value)) {
      return mapEntries(value, (key, each) => changed(each, change, required.includes(key)));
    }
    if (keyword === 'patternProperties' && isSchema(value)) {
      return mapEntries(value, (_, each) => changed(each, change));
    }
    if (Array.isArray(value) && keyword === 'anyOf') return value.map((each) => changed(each, change));
    return HOLDS_A_SCHEMA.includes(keyword) ? changed(value, change) : value;
  });
}

type Change = (child: Schema, example: unknown) => Schema;

const HOLDS_A_SCHEMA = ['items', 'additionalProperties', 'if', 'then', 'else'];

const changed = (value: unknown, change: Change, isRequired = false): unknown =>
  isSchema(value) ? change(value, isRequired ? exampleOf(value) : undefined) : value;

const exampleOf = ({ examples }: Schema): unknown => (Array.isArray(examples) ? examples[0] : undefined);

const mapEntries = (map: Schema, value: (key: string, value: unknown) => unknown): Schema =>
  Object.fromEntries(Object.entries(map).map(([key, each]) => [key, value(key, each)]));

const isSchema = (value: unknown): value is Schema =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
