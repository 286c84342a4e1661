import { type DocumentContext, report } from '../amount.ts';
import { childOf, entriesOf, itemsOf, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** Names that stand twice in a list of positions, such as `mains: [1, 1, 2]`. */
export function reportSameNames(key: string, names: Node | undefined, context: DocumentContext): void {
  const seen = new Set<string>();
  for (const item of itemsOf(names)) {
    const name = textOf(item);
    if (name === undefined) continue;
    if (seen.has(name))
      report(
        context,
        'value',
        item.span,
        `${key} names ${name} twice`,
        'give every position a name of its own',
      );
    seen.add(name);
  }
}

/** Rods that the layout puts on no crankpin: their clearances could never be worked out. */
export function reportLooseRods(
  layout: Node | undefined,
  pins: ReadonlyMap<string, string>,
  crankpins: readonly string[],
  cylinders: readonly string[],
  context: DocumentContext,
): void {
  const loose = cylinders.filter((cylinder) => !pins.has(cylinder));
  const stated = childOf(layout, 'pins') ?? childOf(layout, 'crankpins');
  if (stated === undefined || loose.length === 0) return;
  const message =
    pins.size === 0
      ? `${cylinders.length} cylinders on ${crankpins.length} crankpins, and nothing says which rods run on each`
      : `${loose.length > 1 ? 'the rods of cylinders' : 'the rod of cylinder'} ${loose.join(', ')} ${loose.length > 1 ? 'are' : 'is'} on no crankpin`;
  const help = 'write each pin with its rods, as the maker numbers them: crankpins: { 1: [1, 5], … }';
  report(context, 'value', stated.span, message, help);
}

/** Crankpins and cylinders that the engine does not have, and cylinders that stand on two pins. */
export function reportPins(
  pins: readonly (Node | undefined)[],
  crankpins: readonly string[],
  cylinders: readonly string[],
  context: DocumentContext,
): void {
  const pinOf = new Map<string, string>();
  for (const { key, keySpan, node } of pins.flatMap(entriesOf)) {
    if (!crankpins.includes(key)) {
      const message = `the engine has no crankpin ${key}`;
      report(context, 'value', keySpan, message, `it has ${crankpins.join(', ')}`);
    }
    for (const item of node.kind === 'list' ? node.items : [node]) {
      const cylinder = textOf(item);
      if (cylinder === undefined) continue;
      const other = pinOf.get(cylinder);
      pinOf.set(cylinder, key);
      if (!cylinders.includes(cylinder)) {
        const message = `the engine has no cylinder ${cylinder}`;
        report(context, 'value', item.span, message, `it has ${cylinders.join(', ')}`);
      } else if (other !== undefined) {
        const where = other === key ? `twice on crankpin ${key}` : `on crankpin ${other} as well`;
        report(context, 'value', item.span, `cylinder ${cylinder} stands ${where}`, 'a rod runs on one pin');
      }
    }
  }
}
