import type { Family } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { findPosition } from '../../layout/readKey.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Entry } from '../yaml/node.ts';

/** Two keys of one map that name one position, such as `3` and its label: one of the two would be lost. */
export function reportSamePosition(
  entries: readonly Pick<Entry, 'key' | 'keySpan'>[],
  layout: Layout,
  family: Family,
  context: DocumentContext,
): void {
  const keys = new Map<Position, string>();
  for (const { key, keySpan } of entries) {
    const position = findPosition(layout, family, key);
    if (position === undefined) continue;
    const other = keys.get(position);
    keys.set(position, other ?? key);
    if (other === undefined) continue;
    const message = `${key} and ${other} are the same ${family.name}, ${position.name}`;
    report(context, 'duplicate-key', keySpan, message, 'keep the one that is meant');
  }
}
