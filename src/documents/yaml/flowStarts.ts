import { isMap, isPair, isSeq } from 'yaml';

/** Where each list or mapping in brackets begins, by where it ends. With a stack of its own: nesting may be deep. */
export function flowStarts(contents: unknown): ReadonlyMap<number, number> {
  const starts = new Map<number, number>();
  const waiting: unknown[] = [contents];
  while (waiting.length > 0) {
    const node = waiting.pop();
    if (isPair(node)) waiting.push(node.key, node.value);
    if (!isMap(node) && !isSeq(node)) continue;
    for (const item of node.items) waiting.push(item);
    // Of brackets that end together the innermost is still open: it is met last.
    if (node.flow === true && node.range) starts.set(node.range[1], node.range[0]);
  }
  return starts;
}
