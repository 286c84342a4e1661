import type { Node as ParsedNode } from 'yaml';
import type { Span } from './node.ts';

/** Where the parser found a node: all that it makes of a text have a range. */
export function parsedSpan({ range }: Pick<ParsedNode, 'range'>): Span {
  const [start, end] = range ?? [0, 0];
  return { start, end };
}
