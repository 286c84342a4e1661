import type { Place } from '../diagnostic/place.ts';
import type { DocumentContext } from './amount.ts';
import { childOf, textOf } from './yaml/access.ts';
import type { Node } from './yaml/node.ts';

/** What a scaffold says until somebody says where its figures come from. */
export const NOT_STATED = 'Not stated yet.';

const STANDS_FOR_NOTHING = /^\W*(?:(?:not stated|none|unknown|tbd|todo|x+)(?: yet)?)?\W*$/i;

/** Where a document leaves open what its figures come from. */
export function unstatedSource(root: Node, { source }: DocumentContext): Place | undefined {
  const stated = childOf(root, 'source');
  return stated !== undefined && STANDS_FOR_NOTHING.test(textOf(stated) ?? '')
    ? source.place(stated.span)
    : undefined;
}
