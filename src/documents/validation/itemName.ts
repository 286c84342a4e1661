import type { Node } from '../yaml/node.ts';
import { follow } from './nodeAtPath.ts';

/** The keys by which people know an item of a list, the first that it has. */
const IDS = ['measure', 'work', 'sequence', 'instrument', 'step', 'part', 'on'];

/**
 * What a person would call the place a path leads to: `readings[2] main_bearing_bore`, `limits crankshaft_end_play`.
 * Items are counted from 1; '' for the document itself.
 */
export const itemName = (root: Node, path: readonly string[]): string =>
  path
    .map((step, index) => stepName(root, path.slice(0, index), step))
    .join('')
    .trimStart();

/** The last step of a path by itself, in backticks, and what it stands in. */
export function subjectName(
  root: Node,
  path: readonly string[],
): { readonly subject: string; readonly owner: string } {
  const keyIndex = path.findLastIndex((_, index) => follow(root, path.slice(0, index)).node.kind === 'map');
  if (keyIndex === -1) return { subject: 'the document', owner: '' };
  const isPosition = path[keyIndex - 1] === 'at';
  const from = isPosition ? keyIndex - 1 : keyIndex;
  const subject = `\`${path.slice(from, keyIndex + 1).join(' ')}\``;
  const items = path.slice(keyIndex + 1).map((step) => `[${Number(step) + 1}]`);
  const counted = items.length === 0 ? subject : `${subject.slice(0, -1)}${items.join('')}\``;
  return { subject: counted, owner: itemName(root, path.slice(0, from)) };
}

function stepName(root: Node, before: readonly string[], step: string): string {
  if (follow(root, before).node.kind !== 'list') return ` ${step}`;
  const id = idOf(follow(root, [...before, step]).node);
  return `[${Number(step) + 1}]${id === undefined ? '' : ` ${id}`}`;
}

function idOf(item: Node): string | undefined {
  if (item.kind !== 'map') return undefined;
  const found = IDS.map((key) => item.entries.get(key)?.node).find((node) => node?.kind === 'scalar');
  return found?.kind === 'scalar' ? found.source : undefined;
}
