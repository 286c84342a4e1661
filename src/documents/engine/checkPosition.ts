import { didYouMean } from '../../diagnostic/suggestion.ts';
import { ENGINE, type Family } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { findPosition } from '../../layout/readKey.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Entry } from '../yaml/node.ts';

/** The position that an entry's key names, reported where the engine has none of that name. */
export function checkPosition(
  entry: Pick<Entry, 'key' | 'keySpan'>,
  layout: Layout,
  family: Family,
  context: DocumentContext,
): Position | undefined {
  const found = findPosition(layout, family, entry.key);
  if (found !== undefined) return found;
  if (family === ENGINE) {
    const message = 'it is measured once an engine and has no positions';
    return report(
      context,
      'unknown-position',
      entry.keySpan,
      message,
      'write `value:` beside `measure:`, or leave the position out',
    );
  }
  return report(
    context,
    'unknown-position',
    entry.keySpan,
    `the engine has no ${family.name} ${entry.key}`,
    positionHelp(layout, family, entry.key),
  );
}

/** The nearest name, else all there are, else where to write them. */
export function positionHelp(layout: Layout, family: Family, key: string): string {
  const known = layout.positionsOf(family);
  if (known.length === 0)
    return `its layout names no ${family.name}: add it to layout in the engine document`;
  const names = known.map(({ name }) => name);
  const labels = known.flatMap(({ label }) => label ?? []);
  return didYouMean(key, [...names, ...labels]) ?? `it has ${names.join(', ')}`;
}
