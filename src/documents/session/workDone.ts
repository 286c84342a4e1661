import type { Layout } from '../../layout/layout.ts';
import type { DocumentContext } from '../amount.ts';
import { readDate } from '../date.ts';
import type { Measures } from '../measure.ts';
import { childOf, readNamed, textAt } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { readPart } from './part.ts';
import type { WorkDone } from './reading.ts';

/** One for each part that was worked on. */
export function readWork(
  item: Node,
  index: number,
  { measures, layout }: { readonly measures: Measures; readonly layout: Layout },
  context: DocumentContext,
): readonly WorkDone[] {
  const [work, on] = [textAt(item, 'work'), childOf(item, 'on')];
  if (work === undefined || on === undefined) return [];
  readDate(childOf(item, 'date'), context);
  const parts = on.kind === 'list' ? on.items : [on];
  return parts.flatMap((node) => {
    const named = readNamed(node);
    const part = named && readPart(named, measures, layout, context);
    return named === undefined || part === undefined ? [] : [{ index, work, on: named, part }];
  });
}
