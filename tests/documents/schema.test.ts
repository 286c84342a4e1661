import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { newAjv, schemaFiles, validatorsSource } from '../../src/build/generate.ts';
import { characteristics } from '../../src/characteristics/registry.ts';
import { KINDS } from '../../src/documents/schema/kinds.ts';
import type { Schema } from '../../src/documents/schema/scalars.ts';
import { buildSchemas } from '../../src/documents/schema/schemas.ts';
import {
  engine,
  instruments,
  limits,
  part,
  session,
  shop,
  stock,
  torque,
} from '../../src/documents/validation/validators.generated.js';
import { effort } from '../effort.ts';
import { ACCEPTED } from './accepted.ts';
import { readYaml } from './readYaml.ts';
import { REFUSED } from './refused.ts';

const schemas = buildSchemas(characteristics);
const everyPart = KINDS.flatMap((kind) => partsOf(schemas[kind], `${kind}#`));
const everyProperty = everyPart.filter(({ pointer }) => /\/properties\/[^/]+$/.test(pointer));
const published = publishedValidators();
const compiled = { shop, engine, limits, instruments, session, torque, stock, part };

describe('the published schemas', () => {
  it('are fresh: run `npm run build` and commit schemas/ when this fails', () => {
    const folder = new URL('../../schemas/', import.meta.url);
    const onDisk = readdirSync(folder);
    const read = onDisk.map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const);
    expect(new Map(read), 'run `npm run build` and commit schemas/').toEqual(
      new Map([...schemaFiles()].sort(([a], [b]) => (a < b ? -1 : 1))),
    );
  });

  it('are in the draft-07 vocabulary', () => {
    for (const kind of KINDS) expect(schemas[kind].$schema).toBe('http://json-schema.org/draft-07/schema#');
    const words = new Set(everyPart.flatMap(({ schema }) => Object.keys(schema)));
    expect([...words].filter((word) => !DRAFT_07.includes(word)).sort()).toEqual([
      'enumDescriptions',
      'errorMessage',
    ]);
  });

  it('have a title and a description for every key', () => {
    const mute = everyProperty.filter(({ schema }) => !isText(schema.title) || !isText(schema.description));
    expect(everyProperty.length).toBeGreaterThan(200);
    expect(mute.map(({ pointer }) => pointer)).toEqual([]);
  });

  it('refuse unknown keys in every map', () => {
    const open = everyPart.filter(
      ({ schema }) =>
        schema.type === 'object' && schema.additionalProperties === undefined && !schema.required,
    );
    expect(open.map(({ pointer }) => pointer)).toEqual([]);
  });

  it('name every key that they require', () => {
    const unknown = everyPart.filter(({ schema }) => {
      const required = Array.isArray(schema.required) ? schema.required : [];
      return (
        schema.properties !== undefined &&
        required.some((key) => !Object.hasOwn(Object(schema.properties), key))
      );
    });
    expect(unknown.map(({ pointer }) => pointer)).toEqual([]);
  });

  it('show only examples that they accept', () => {
    const shown = everyPart.flatMap(({ pointer, schema }) =>
      [schema.examples ?? []].flat(1).map((example) => ({ pointer, schema, example })),
    );
    expect(shown.length).toBeGreaterThan(200);
    const wrong = shown.filter(({ pointer, schema, example }) => !validatorOf(pointer, schema)?.(example));
    expect(wrong).toEqual([]);
  });

  it('say what to write wherever a value can be refused', () => {
    const silent = everyPart.filter(
      ({ schema, pointer }) =>
        (schema.pattern !== undefined || schema.enum !== undefined || isUnion(schema)) &&
        !isText(schema.errorMessage) &&
        !/\/anyOf\/\d+$/.test(pointer),
    );
    expect(silent.map(({ pointer }) => pointer)).toEqual([]);
  });

  it('offer the characteristics of the registry, and take others for the code to judge', () => {
    const [first] = characteristics;
    const offered = everyPart.find(
      ({ pointer }) => pointer === `limits#/properties/limits/properties/${first?.id}`,
    );
    expect(offered?.schema.title).toBe(first?.label);
    const measure = published.getSchema('session#/definitions/measure');
    expect([measure?.(first?.id), measure?.('no_such_measure'), measure?.('No such')]).toEqual([
      true,
      true,
      false,
    ]);
  });
});

describe('patterns', () => {
  const patterns = new Set(
    everyPart.flatMap(({ schema }) =>
      [schema.pattern ?? [], Object.keys(Object(schema.patternProperties))].flat(),
    ),
  );

  // Short texts first: a pattern that tries again and again already takes seconds for 26 characters.
  it.each([...patterns])('decide about a very long text at once: %s', (pattern) => {
    for (const length of [26, 50_000]) expect(longestWait(String(pattern), length)).toBeLessThan(200);
  });
});

function longestWait(pattern: string, length: number): number {
  const regex = new RegExp(pattern, 'u');
  const waits = ['1', '0.', '.', ' ', 'a', '1 to ', 'under 1', '-', 'in ', '1 in to 1'].map((part) => {
    const [text, lines] = [`${part.repeat(length)}!`, `1${part.repeat(length)}\n`];
    return effort(() => regex.test(text) || regex.test(lines), 1);
  });
  return Math.max(...waits);
}

describe('the compiled validators', () => {
  it('need no package at run time', () => {
    const built = readFileSync(
      new URL('../../src/documents/validation/validators.generated.js', import.meta.url),
      'utf8',
    );
    expect(built).not.toMatch(/\brequire\(|\bimport\b/);
    expect(validatorsSource()).toMatch(/export const session/);
  });

  it.each([...ACCEPTED, ...REFUSED.map(({ title, kind, text }) => [title, kind, text] as const)])(
    'judge as the published schema does: %s',
    (_, kind, text) => {
      const { data } = readYaml(text);
      expect(compiled[kind](data)).toBe(published.getSchema(kind)?.(data));
    },
  );
});

interface Part {
  /** As a reference into the schema of its kind. */
  readonly pointer: string;
  readonly schema: Schema;
}

function partsOf(schema: Schema, pointer: string): Part[] {
  const inside = Object.entries(schema).flatMap(([keyword, value]) => {
    const here = `${pointer}/${keyword}`;
    if (['properties', 'patternProperties', 'definitions'].includes(keyword)) return partsIn(value, here);
    if (keyword === 'anyOf' || keyword === 'allOf') return partsIn(value, here);
    const holds = ['items', 'additionalProperties', 'if', 'then', 'else'].includes(keyword);
    return holds && typeof value === 'object' ? partsOf(Object(value), here) : [];
  });
  return [{ pointer, schema }, ...inside];
}

function partsIn(schemas: unknown, pointer: string): Part[] {
  return Object.entries(Object(schemas)).flatMap(([key, value]) =>
    partsOf(
      Object(value),
      `${pointer}/${encodeURIComponent(key.replaceAll('~', '~0').replaceAll('/', '~1'))}`,
    ),
  );
}

function publishedValidators() {
  const ajv = newAjv();
  for (const kind of KINDS) ajv.addSchema(schemas[kind], kind);
  return ajv;
}

const validators = new Map<string, ReturnType<typeof published.getSchema>>();

/** Of parts of one kind that differ in their words alone one is compiled. */
function validatorOf(pointer: string, { title, description, examples, ...rules }: Schema) {
  const key = `${pointer.split('#')[0]} ${JSON.stringify(rules)}`;
  const known = validators.get(key) ?? published.getSchema(pointer);
  validators.set(key, known);
  return known;
}

const isText = (value: unknown): boolean => typeof value === 'string' && value.trim() !== '';

const isUnion = ({ anyOf }: Schema): boolean =>
  Array.isArray(anyOf) &&
  !anyOf.every((branch) => Array.isArray(branch.required) && branch.type === undefined);

const DRAFT_07 = [
  '$schema',
  '$ref',
  'title',
  'description',
  'examples',
  'definitions',
  'type',
  'enum',
  'pattern',
  'minimum',
  'maximum',
  'exclusiveMinimum',
  'items',
  'minItems',
  'properties',
  'patternProperties',
  'additionalProperties',
  'required',
  'minProperties',
  'dependencies',
  'anyOf',
  'allOf',
  'if',
  'then',
  'else',
];
