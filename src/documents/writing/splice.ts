import { isScalar } from 'yaml';
import { quoted } from '../../diagnostic/quoted.ts';
import { keyText } from './keyText.ts';
import { type Change, placeEntry, placeItem, placeScalar } from './placement.ts';
import {
  alter,
  type Found,
  findNode,
  type Parsed,
  type Path,
  parseShape,
  partAt,
  type Shape,
  sameShape,
} from './shape.ts';
import { indentRest, isFlow } from './textLayout.ts';

/** The one stretch in which the new text differs from the old. */
export interface Splice {
  readonly text: string;
  /** Offset of the stretch in both texts, in UTF-16 units. */
  readonly start: number;
  readonly removed: string;
  readonly inserted: string;
}

export interface SpliceProblem {
  /**
   * `document`: the text is no plain YAML. `text`: what was to be added is none. `place`: nothing stands at the path.
   * `exists`: the key is taken. `layout`: it cannot be written there without touching anything else.
   */
  readonly reason: 'document' | 'text' | 'place' | 'exists' | 'layout';
  readonly message: string;
  readonly help: string;
}

export type SpliceResult =
  | { readonly ok: true; readonly value: Splice }
  | { readonly ok: false; readonly problem: SpliceProblem };

/**
 * Adds an item to the list at `path`. `item` is YAML text, of several lines if need be, as it stands at the left
 * margin. An empty list becomes a block; a list within brackets takes an item of one line.
 */
export function appendItem(text: string, path: Path, item: string): SpliceResult {
  return splice(text, path, item, {
    place: (found, content) => placeItem(text, found, content),
    expect: (list, added) => ({ list: [...('list' in list ? list.list : []), added] }),
  });
}

/** Adds `key: value` at the end of the map at `path`. `value` is YAML text as it stands at the left margin. */
export function insertEntry(text: string, path: Path, key: string, value: string): SpliceResult {
  return splice(text, path, value, {
    place: (found, content, added) => placeEntry(text, found, entryText(key, content, added)),
    expect: (map, added) => ({ map: [...('map' in map ? map.map : []), [key, added]] }),
    refuse: (map) => ('map' in map && map.map.some(([known]) => known === key) ? taken(key) : undefined),
  });
}

/** Puts other text, of one line, in place of the scalar at `path`. A block of text (`|`, `>`) is not replaced. */
export function replaceScalar(text: string, path: Path, replacement: string): SpliceResult {
  return splice(text, path, replacement, {
    place: (found, content) => placeScalar(text, found, content),
    expect: (_, added) => added,
  });
}

type Part = Exclude<Shape, string> | { readonly scalar: string };

interface Operation {
  readonly place: (found: Found, content: string, added: Parsed) => Change | undefined;
  readonly expect: (part: Part, added: Shape) => Shape;
  readonly refuse?: (part: Part) => SpliceResult | undefined;
}

function splice(text: string, path: Path, given: string, operation: Operation): SpliceResult {
  const before = parseShape(text);
  if (before === undefined) return problem('document', 'the document is not plain YAML', 'correct it first');
  const content = given.replace(/\r\n/g, '\n').replace(/\n+$/, '');
  const added = parseShape(content);
  if (added === undefined) return notYaml(given);
  const found = findNode(before.node, path);
  const part = partAt(before.shape, path);
  if (found === undefined || part === undefined) return nothingAt(path);
  const refused = operation.refuse?.(asPart(part));
  if (refused !== undefined) return refused;
  const change = operation.place(found, content, added);
  const wanted = alter(before.shape, path, (shape) => operation.expect(asPart(shape), added.shape));
  return (change && prove(text, change, wanted)) ?? noRoom(path);
}

const asPart = (shape: Shape): Part => (typeof shape === 'string' ? { scalar: shape } : shape);

/** The change stands only if the new text says what the old one said, plus the change and nothing else. */
function prove(text: string, { start, end, inserted }: Change, wanted: Shape): SpliceResult | undefined {
  const changed = text.slice(0, start) + inserted + text.slice(end);
  const after = parseShape(changed);
  if (after === undefined || !sameShape(after.shape, wanted)) return undefined;
  return { ok: true, value: { text: changed, start, removed: text.slice(start, end), inserted } };
}

/** A scalar, and whatever is in brackets, goes on the line of its key; a block goes below it. */
function entryText(key: string, content: string, { node }: Parsed): string {
  const separator = isScalar(node) || isFlow(node) ? ' ' : '\n  ';
  return `${keyText(key)}:${separator}${indentRest(content, 2)}`;
}

const problem = (reason: SpliceProblem['reason'], message: string, help: string): SpliceResult => ({
  ok: false,
  problem: { reason, message, help },
});

const notYaml = (given: string): SpliceResult =>
  problem('text', `${quoted(given)} is not plain YAML`, 'put it in quotes, or write it plainly');

const taken = (key: string): SpliceResult => problem('exists', `${key} is there already`, 'change it there');

const nothingAt = (path: Path): SpliceResult =>
  problem('place', `the document has nothing at ${path.join(' / ')}`, 'add it by hand first');

const noRoom = (path: Path): SpliceResult =>
  problem(
    'layout',
    `${path.join(' / ')} is written in a way that cannot be added to without touching the rest`,
    'nothing was changed; add it by hand, or write it as a block, one item a line',
  );
