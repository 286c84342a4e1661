import { didYouMean } from '../diagnostic/suggestion.ts';
import { type DocumentContext, report } from './amount.ts';
import { textOf } from './yaml/access.ts';
import type { Node } from './yaml/node.ts';

/** A word of a list, written with spaces or with _; or a report of what is no word of it. */
export function oneOf<T extends string>(
  allowed: readonly T[],
  node: Node | undefined,
  context: DocumentContext,
): T | undefined {
  const text = textOf(node)?.replaceAll('_', ' ');
  if (text === undefined || node === undefined) return undefined;
  const found = allowed.find((each) => each === text);
  if (found !== undefined) return found;
  const help = didYouMean(text, allowed) ?? `one of ${allowed.join(', ')}`;
  return report(context, 'value', node.span, `${text} is not known here`, help);
}
