import { childOf, readNamed, textAt } from './access.ts';
import type { Node } from './node.ts';
import type { WorkDone } from './reading.ts';

/** One for each part that was worked on. */
export function readWork(item: Node, index: number): readonly WorkDone[] {
  const [work, on] = [textAt(item, 'work'), childOf(item, 'on')];
  if (work === undefined || on === undefined) return [];
  const parts = on.kind === 'list' ? on.items : [on];
  return parts.flatMap((part) => {
    const named = readNamed(part);
    return named === undefined ? [] : [{ index, work, on: named }];
  });
}
