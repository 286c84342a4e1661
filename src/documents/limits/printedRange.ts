import { textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** Both ends of a range as a manual prints it: in `0.051 to 0.097 mm` the unit at the end is meant for both. */
export function printedRange(node: Node | undefined): readonly [least: string, greatest: string] | undefined {
  const [, low, high = ''] = /^(\S.*?) to (.+)$/.exec(textOf(node) ?? '') ?? [];
  if (low === undefined) return undefined;
  const unit = /\d ?([^\d.].*)$/.exec(high)?.[1];
  return [unit !== undefined && /\d$/.test(low) ? `${low} ${unit}` : low, high];
}
