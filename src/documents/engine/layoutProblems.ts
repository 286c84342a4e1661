import { didYouMean } from '../../diagnostic/suggestion.ts';
import { type Axis, CYLINDER, type NamedAxis } from '../../layout/axis.ts';
import type { Layout } from '../../layout/layout.ts';
import { RESERVED } from '../../layout/reservedWords.ts';
import { type DocumentContext, report } from '../amount.ts';
import { childOf, entriesOf, itemsOf, type Named, readNamed, textOf } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';

/** Names that stand twice in a list of positions, such as `mains: [1, 1, 2]`, or in that of one cylinder. */
export function reportSameNames(key: string, names: Node | undefined, context: DocumentContext): void {
  if (names?.kind === 'map') {
    for (const { key: holder, node } of entriesOf(names))
      reportSameNames(`${key} of ${holder}`, node, context);
    return;
  }
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
function reportLooseRods(
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
      ? `${cylinders.length} cylinders on ${crankpins.length} crankpins, and which rods run on each is not stated`
      : `${loose.length > 1 ? 'the rods of cylinders' : 'the rod of cylinder'} ${loose.join(', ')} ${loose.length > 1 ? 'are' : 'is'} on no crankpin`;
  const help = 'write each pin with its rods, as the maker numbers them: crankpins: { 1: [1, 5], … }';
  report(context, 'value', stated.span, message, help);
}

/** Words that say what stands at a position cannot name one. */
export function reportReserved(names: Node | undefined, context: DocumentContext): void {
  for (const { name, span } of namesIn(names)) {
    if (!RESERVED.has(name)) continue;
    const message = `${name} is a reserved word, and cannot be the name of a position`;
    report(context, 'value', span, message, 'give it another name');
  }
}

const namesIn = (node: Node | undefined): readonly Named[] =>
  node?.kind === 'map'
    ? entriesOf(node).flatMap(({ key, keySpan, node: below }) => [
        { name: key, span: keySpan },
        ...namesIn(below),
      ])
    : itemsOf(node).flatMap((item) => readNamed(item) ?? []);

/** What stands under `labels` for a name that the layout does not have; a label may be no shape word either. */
export function reportNoLabel(
  { key, keySpan, node }: Entry,
  axis: Axis,
  layout: Layout,
  context: DocumentContext,
): void {
  const names = layout.namesAlong(axis);
  const label = readNamed(node);
  if (label !== undefined && RESERVED.has(label.name)) {
    const message = `${label.name} is a reserved word, and cannot be the label of a position`;
    report(context, 'value', label.span, message, 'give it another label');
  }
  if (names.includes(key)) return;
  const help =
    names.length === 0
      ? `its layout names no ${axis}: add it to layout in the engine document`
      : (didYouMean(key, names) ?? `it has ${names.join(', ')}`);
  report(context, 'unknown-position', keySpan, `the engine has no ${axis} ${key}`, help);
}

/** Crankpins or banks, and cylinders in them, that the engine does not have; and cylinders that stand in two, or on none. */
export function reportCylinders(
  layout: Node | undefined,
  { axis, keys, ofCylinders }: NamedAxis,
  names: ReadonlyMap<Axis, readonly string[]>,
  of: ReadonlyMap<Axis, ReadonlyMap<string, string>>,
  context: DocumentContext,
): void {
  const reported = context.problems.length;
  const [all, cylinders] = [names.get(axis) ?? [], names.get(CYLINDER) ?? []];
  const seen = new Map<string, string>();
  for (const { key, keySpan, node } of keys.flatMap((each) => entriesOf(childOf(layout, each)))) {
    if (!all.includes(key)) {
      report(context, 'value', keySpan, `the engine has no ${axis} ${key}`, `it has ${all.join(', ')}`);
    }
    for (const item of node.kind === 'list' ? node.items : [node]) {
      const cylinder = textOf(item);
      if (cylinder === undefined) continue;
      const other = seen.get(cylinder);
      seen.set(cylinder, key);
      if (!cylinders.includes(cylinder)) {
        const message = `the engine has no cylinder ${cylinder}`;
        report(context, 'value', item.span, message, `it has ${cylinders.join(', ')}`);
      } else if (other !== undefined) {
        const on = ofCylinders?.on;
        const where = other === key ? `twice ${on} ${axis} ${key}` : `${on} ${axis} ${other} as well`;
        report(context, 'value', item.span, `cylinder ${cylinder} is ${where}`, ofCylinders?.but);
      }
    }
  }
  // A rod whose pin is misspelt is on none: once that is put right the rest can be told.
  if (ofCylinders?.every === true && context.problems.length === reported)
    reportLooseRods(layout, of.get(axis) ?? new Map(), all, cylinders, context);
}
