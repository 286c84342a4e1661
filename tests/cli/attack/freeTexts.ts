import { PATTERNS } from '../../../src/documents/schema/patterns.ts';

/** A text that a schema leaves to whoever writes the document: `session.readings[].note`, or a key, `engine.labels.main.<name>`. */
export interface FreeText {
  readonly path: string;
  readonly text: string;
}

type Node = Readonly<Record<string, unknown>>;

/** Every path at which a schema takes any text. */
export const freePaths = (schema: object, kind: string): ReadonlySet<string> =>
  new Set(documentsByPath(schema, kind).keys());

/** The same, each with a document of nothing but that text and what leads to it. */
export function documentsByPath(schema: object, kind: string): ReadonlyMap<string, object> {
  const found = new Map<string, object>();
  const visit = (node: unknown, path: string, around: (value: unknown) => object): void => {
    for (const each of branchesOf(node, schema)) {
      if (isFree(each)) found.set(path, around('qText'));
      for (const { child, step, key, holding } of childrenOf(each)) {
        if (key !== undefined) found.set(path + key, around(holding(1)));
        visit(child, path + step, (value) => around(holding(value)));
      }
    }
  };
  visit(schema, kind, (value) => ({ kind, ...recordOf(value) }));
  return found;
}

/** The texts of a document that stand where its schema takes any. */
export function freeTextsIn(schema: object, kind: string, document: unknown): readonly FreeText[] {
  const found: FreeText[] = [];
  const visit = (node: unknown, value: unknown, path: string): void => {
    for (const each of branchesOf(node, schema)) {
      if (isFree(each) && typeof value === 'string') found.push({ path, text: value });
      for (const { child, step, key, takes } of childrenOf(each)) {
        for (const [name, below] of entriesOf(value).filter(([each]) => takes(each))) {
          if (key !== undefined) found.push({ path: path + key, text: name });
          visit(child, below, path + step);
        }
      }
    }
  };
  visit(schema, document, kind);
  return found;
}

/** A list's items have no names. */
const ITEM = Symbol('item');

function entriesOf(value: unknown): readonly (readonly [string, unknown])[] {
  if (Array.isArray(value)) return value.map((each) => [ITEM.toString(), each]);
  return typeof value === 'object' && value !== null ? Object.entries(value) : [];
}

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null;

const nodesIn = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

const recordOf = (value: unknown): Node => (isNode(value) ? value : {});

/** A schema and all that it refers to or offers: what may hold for one value. */
function branchesOf(node: unknown, schema: object): readonly Node[] {
  if (!isNode(node)) return [];
  const { $ref, anyOf, allOf, then, else: otherwise } = node;
  const referred = typeof $ref === 'string' ? [targetOf($ref, schema)] : [];
  const more = [...referred, ...nodesIn(anyOf), ...nodesIn(allOf), then, otherwise];
  return [node, ...more.flatMap((each) => branchesOf(each, schema))];
}

const targetOf = (reference: string, schema: object): unknown =>
  reference
    .replace('#/', '')
    .split('/')
    .reduce<unknown>((node, key) => recordOf(node)[key], schema);

const isFree = ({ type, pattern, enum: choices }: Node): boolean =>
  [type].flat().includes('string') &&
  choices === undefined &&
  (pattern === undefined || pattern === PATTERNS.notBlank);

interface Child {
  readonly child: unknown;
  readonly step: string;
  /** What is added to the path of a key that is a name; undefined of a key that has a meaning. */
  readonly key?: string;
  readonly takes: (key: string) => boolean;
  /** A map or a list with a value at such a place. */
  readonly holding: (value: unknown) => object;
}

function childrenOf({ items, properties, patternProperties, additionalProperties }: Node): readonly Child[] {
  const known = recordOf(properties);
  const patterns = Object.entries(recordOf(patternProperties));
  const isOther = (key: string) =>
    !isItem(key) &&
    !Object.hasOwn(known, key) &&
    !patterns.some(([pattern]) => new RegExp(pattern, 'u').test(key));
  return [
    ...Object.entries(known).map(([name, child]) => childOf(child, `.${name}`, (key) => key === name, name)),
    ...patterns.map(([pattern, child]) => {
      const takes = (key: string) => new RegExp(pattern, 'u').test(key);
      return childOf(child, '.{}', takes, KEYS.find(takes) ?? '');
    }),
    ...(isNode(items)
      ? [{ child: items, step: '[]', takes: isItem, holding: (value: unknown) => [value] }]
      : []),
    ...(additionalProperties === true || isNode(additionalProperties)
      ? [{ ...childOf(additionalProperties, '.*', isOther, 'qKey'), key: '.<name>' }]
      : []),
  ];
}

const isItem = (key: string): boolean => key === ITEM.toString();

/** Of each pattern that keys of a schema have. */
const KEYS = ['main_journal_diameter', '0.010 under'];

const childOf = (child: unknown, step: string, takes: Child['takes'], name: string): Child => ({
  child,
  step,
  takes,
  holding: (value) => ({ [name]: value }),
});
