import type { Layout } from '../../layout/layout.ts';
import { shortName } from '../../layout/naming.ts';
import type { Position } from '../../layout/position.ts';

/** `1 to 4, 6`: positions in the order of the layout; nothing for what there is but once. */
export function placesText(positions: readonly Position[], layout: Layout): string {
  const [first] = positions;
  if (first === undefined || first.family.isSingle) return '';
  const all = layout.positionsOf(first.family);
  const asked = new Set(positions);
  const texts: string[] = [];
  for (let at = 0; at < all.length; at++) {
    const end = all.findIndex((each, index) => index >= at && !asked.has(each));
    const row = all.slice(at, end < 0 ? all.length : end);
    texts.push(...rowText(row.map(shortName)));
    at += row.length;
  }
  return texts.join(', ');
}

const rowText = (names: readonly string[]): readonly string[] =>
  names.length > 2 ? [`${names[0]} to ${names.at(-1)}`] : names;
