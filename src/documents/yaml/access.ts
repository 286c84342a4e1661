import type { Entry, Node, ScalarNode, Span } from './node.ts';

// Readers go through these: where a node is of another kind than wanted they find nothing and say
// nothing, because the schema has said it already.

export const entriesOf = (node: Node | undefined): readonly Entry[] =>
  node?.kind === 'map' ? [...node.entries.values()] : [];

export const itemsOf = (node: Node | undefined): readonly Node[] => (node?.kind === 'list' ? node.items : []);

export const childOf = (node: Node | undefined, key: string): Node | undefined =>
  node?.kind === 'map' ? node.entries.get(key)?.node : undefined;

export const scalarOf = (node: Node | undefined): ScalarNode | undefined =>
  node?.kind === 'scalar' && node.value !== null ? node : undefined;

/** Text as written: a name such as `3` or `A12` reads the same with quotes and without. */
export const textOf = (node: Node | undefined): string | undefined => scalarOf(node)?.source;

export const textAt = (node: Node | undefined, key: string): string | undefined => textOf(childOf(node, key));

/** The text items of a list; one bare scalar stands for a list of one. */
export const textsOf = (node: Node | undefined): readonly string[] =>
  (node?.kind === 'list' ? node.items : node === undefined ? [] : [node]).flatMap(
    (item) => textOf(item) ?? [],
  );

export const flagAt = (node: Node | undefined, key: string): boolean =>
  scalarOf(childOf(node, key))?.value === true;

/** A word of a document, and where it stands. */
export interface Named {
  readonly name: string;
  readonly span: Span;
}

/** The names of a list; one bare scalar stands for a list of one. */
export function namesAt(node: Node | undefined, key: string): readonly Named[] {
  const child = childOf(node, key);
  return (child?.kind === 'list' ? child.items : [child]).flatMap((each) => readNamed(each) ?? []);
}

/** The text of a scalar with its place, such as the name of an instrument. */
export function readNamed(
  node: Node | undefined,
): { readonly name: string; readonly span: Span } | undefined {
  const name = textOf(node);
  return name === undefined || node === undefined ? undefined : { name, span: node.span };
}
