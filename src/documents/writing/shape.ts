import {
  isMap,
  isScalar,
  isSeq,
  type Node,
  parseDocument,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import { isFlow } from './textLayout.ts';

/** What a document says, without its layout: numbers as their digits stand, everything else by its value. */
export type Shape = string | { readonly list: readonly Shape[] } | { readonly map: readonly ShapeEntry[] };
export type ShapeEntry = readonly [key: string, value: Shape];

export type Path = readonly (string | number)[];

/** A node that says what it shows: no alias. */
export type PlainNode = Scalar | YAMLMap | YAMLSeq;

/** The node of a text and what it says; undefined when it is not one plain YAML document. */
export interface Parsed {
  readonly node: PlainNode;
  readonly shape: Shape;
}

const OPTIONS = {
  version: '1.2',
  resolveKnownTags: false,
  stringKeys: true,
  // The library's own check is quadratic; a repeated key is the loader's business.
  uniqueKeys: false,
  prettyErrors: false,
} as const;

export function parseShape(text: string): Parsed | undefined {
  const document = parseDocument(text, OPTIONS);
  if (document.errors.length > 0 || document.warnings.length > 0 || !document.contents) return undefined;
  const shape = shapeOf(document.contents);
  return shape === undefined ? undefined : { node: document.contents as PlainNode, shape };
}

// A shape is undefined where an anchor, an alias or a tag makes the text mean more than it shows.
function shapeOf(node: unknown): Shape | undefined {
  if (node === null) return 'null';
  if (isScalar(node)) return node.anchor || node.tag ? undefined : scalarShape(node);
  if (isSeq(node)) return node.anchor || node.tag ? undefined : listShape(node.items);
  if (isMap(node)) return node.anchor || node.tag ? undefined : mapShape(node.items);
  return undefined;
}

function scalarShape({ value, source }: Scalar): string {
  if (value === null) return 'null';
  return typeof value === 'number' ? `number ${source}` : `${typeof value} ${value}`;
}

function listShape(items: readonly unknown[]): Shape | undefined {
  const list: Shape[] = [];
  for (const item of items) {
    const shape = shapeOf(item);
    if (shape === undefined) return undefined;
    list.push(shape);
  }
  return { list };
}

function mapShape(pairs: readonly { readonly key: unknown; readonly value: unknown }[]): Shape | undefined {
  const map: ShapeEntry[] = [];
  for (const { key, value } of pairs) {
    const shape = shapeOf(value);
    if (!isScalar(key) || shape === undefined) return undefined;
    map.push([String(key.value), shape]);
  }
  return { map };
}

/** A node and what it hangs on. */
export interface Found {
  readonly node: PlainNode;
  /** Its key, when it is a value of a map. */
  readonly key: Node | undefined;
  /** It stands within brackets. */
  readonly inFlow: boolean;
}

/** What stands at a path, or undefined. A key without a value has an empty scalar. */
export function findNode(root: PlainNode, path: Path): Found | undefined {
  let found: Found = { node: root, key: undefined, inFlow: false };
  for (const step of path) {
    const { node } = found;
    const inFlow = found.inFlow || isFlow(node);
    const pair = isMap(node) ? node.items.find(({ key }) => isScalar(key) && key.value === step) : undefined;
    const value = isSeq(node) && typeof step === 'number' ? node.items[step] : pair?.value;
    if (!isScalar(value) && !isMap(value) && !isSeq(value)) return undefined;
    found = { node: value, key: isScalar(pair?.key) ? pair.key : undefined, inFlow };
  }
  return found;
}

/** What the shape says at a path, or undefined. */
export function partAt(shape: Shape, path: Path): Shape | undefined {
  const [step, ...rest] = path;
  if (step === undefined) return shape;
  if (typeof shape === 'string') return undefined;
  const part = 'list' in shape ? shape.list[Number(step)] : shape.map.find(([known]) => known === step)?.[1];
  return part === undefined ? undefined : partAt(part, rest);
}

/** The same shape with the part at a path changed; unchanged when nothing stands there. */
export function alter(shape: Shape, path: Path, change: (part: Shape) => Shape): Shape {
  const [step, ...rest] = path;
  if (step === undefined) return change(shape);
  if (typeof shape === 'string') return shape;
  if ('list' in shape) {
    return { list: shape.list.map((part, index) => (index === step ? alter(part, rest, change) : part)) };
  }
  const at = shape.map.findIndex(([key]) => key === step);
  return {
    map: shape.map.map(([key, part], index) => [key, index === at ? alter(part, rest, change) : part]),
  };
}

export const sameShape = (a: Shape, b: Shape): boolean => JSON.stringify(a) === JSON.stringify(b);
