import type { Entry, ListNode, MapNode, Node, Span } from '../yaml/node.ts';

/** What a path of keys leads to: the value, and the key it stands behind where it has one. */
export interface Whereabouts {
  readonly node: Node;
  readonly entry?: Entry;
}

/** Follows a path as far as the document goes; a step that is not there ends the walk. */
export function follow(root: Node, path: readonly string[]): Whereabouts {
  let here: Whereabouts = { node: root };
  for (const step of path) {
    const next = stepInto(here.node, step);
    if (next === undefined) return here;
    here = next;
  }
  return here;
}

function stepInto(node: Node, step: string): Whereabouts | undefined {
  if (node.kind === 'map') return behind(node, step);
  return node.kind === 'list' ? within(node, step) : undefined;
}

function behind(map: MapNode, key: string): Whereabouts | undefined {
  const entry = map.entries.get(key);
  return entry === undefined ? undefined : { node: entry.node, entry };
}

function within(list: ListNode, index: string): Whereabouts | undefined {
  const node = list.items[Number(index)];
  return node === undefined ? undefined : { node };
}

/** The value, or its key where nothing is written behind it. */
export const spanOfValue = ({ node, entry }: Whereabouts): Span =>
  entry !== undefined && isUnwritten(node) ? entry.keySpan : node.span;

/** The key a map stands behind, or else its first key: where something is missing from it. */
export const spanOfOwner = ({ node, entry }: Whereabouts): Span =>
  entry?.keySpan ?? firstKey(node) ?? node.span;

export const spanOfKey = ({ node }: Whereabouts, key: string): Span =>
  (node.kind === 'map' ? node.entries.get(key)?.keySpan : undefined) ?? node.span;

const isUnwritten = ({ kind, span, ...node }: Node): boolean =>
  kind === 'scalar' && (span.start === span.end || ('source' in node && node.source === ''));

const firstKey = (node: Node): Span | undefined =>
  node.kind === 'map' ? node.entries.values().next().value?.keySpan : undefined;
