import { didYouMean } from '../../diagnostic/suggestion.ts';
import { type Amount, type DocumentContext, readAmount, report } from '../amount.ts';
import type { Measures } from '../measure.ts';
import { childOf, entriesOf, itemsOf, scalarOf, textAt, textOf, textsOf } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';
import { FAMILIES, type Family, findPosition, type Layout, positionsOf } from './layout.ts';
import { reportPins, reportSameNames } from './layoutProblems.ts';
import { type DecisionRule, readDecisionRule } from './shop.ts';

export interface EngineDocument {
  readonly name: string;
  readonly layout: Layout;
  /** Nominal sizes by name, such as `bore`. */
  readonly sizes: ReadonlyMap<string, Amount>;
  readonly materials: ReadonlyMap<string, string>;
  readonly decisionRule: DecisionRule | undefined;
  /** Parts of the document that are valid and kept, and not judged by this version. */
  readonly kept: readonly string[];
}

/** Sizes that are not characteristics; all lengths. */
export const PLAIN_SIZES: readonly string[] = ['bore', 'stroke'];

export function readEngine(root: Node, measures: Measures, context: DocumentContext): EngineDocument {
  return {
    name: textAt(root, 'name') ?? context.source.path,
    layout: readLayout(root, context),
    sizes: readSizes(childOf(root, 'sizes'), measures, context),
    materials: new Map(
      entriesOf(childOf(root, 'materials')).map(({ key, node }) => [key, textOf(node) ?? '']),
    ),
    decisionRule: readDecisionRule(root),
    kept: childOf(root, 'fitted') === undefined ? [] : ['fitted'],
  };
}

/** How the rows of positions are written in `layout`, and in `labels`. */
const LAYOUT_KEYS: readonly (readonly [string, string, Family])[] = [
  ['mains', 'main', 'main'],
  ['crankpins', 'crankpin', 'crankpin'],
  ['cylinders', 'cylinder', 'cylinder'],
  ['valves', 'valve', 'valve'],
  ['cam_bearings', 'cam_bearing', 'cam bearing'],
];

function readLayout(root: Node, context: DocumentContext): Layout {
  const node = childOf(root, 'layout');
  const positions = new Map<Family, readonly string[]>(FAMILIES.map((family) => [family, []]));
  for (const [key, , family] of LAYOUT_KEYS) positions.set(family, readNames(childOf(node, key)));
  for (const [key] of LAYOUT_KEYS) reportSameNames(key, childOf(node, key), context);
  const pinOfCylinder = readPins(node, positions);
  if (positions.get('crankpin')?.length === 0)
    positions.set('crankpin', [...new Set(pinOfCylinder.values())]);
  if (positions.get('cylinder')?.length === 0) positions.set('cylinder', [...pinOfCylinder.keys()]);
  reportPins(
    [childOf(node, 'crankpins'), childOf(node, 'pins')],
    positions.get('crankpin') ?? [],
    positions.get('cylinder') ?? [],
    context,
  );
  const unlabelled: Layout = { positions, pinOfCylinder, labels: new Map() };
  return { ...unlabelled, labels: readLabels(childOf(root, 'labels'), unlabelled, context) };
}

/** A count stands for 1 to n, a list for its names, a map for its keys. */
function readNames(node: Node | undefined): readonly string[] {
  const scalar = scalarOf(node);
  if (typeof scalar?.value === 'number') {
    return Array.from({ length: Math.min(scalar.value, MOST_POSITIONS) }, (_, index) => String(index + 1));
  }
  if (node?.kind === 'map') return [...node.entries.keys()];
  return itemsOf(node).flatMap((item) => textOf(item) ?? []);
}

/** More than any engine has, and little enough that a count from a stranger cannot fill the memory. */
const MOST_POSITIONS = 200;

/** From `pins` or from `crankpins` written as a map; one rod a pin where both are counted alike. */
function readPins(
  layout: Node | undefined,
  positions: ReadonlyMap<Family, readonly string[]>,
): Map<string, string> {
  const pins = new Map<string, string>();
  for (const { key, node } of [
    ...entriesOf(childOf(layout, 'crankpins')),
    ...entriesOf(childOf(layout, 'pins')),
  ]) {
    for (const cylinder of textsOf(node)) pins.set(cylinder, key);
  }
  const [cylinders, crankpins] = [positions.get('cylinder') ?? [], positions.get('crankpin') ?? []];
  if (pins.size === 0 && cylinders.length === crankpins.length) {
    for (const [index, cylinder] of cylinders.entries()) pins.set(cylinder, crankpins[index] ?? cylinder);
  }
  return pins;
}

function readLabels(
  node: Node | undefined,
  layout: Layout,
  context: DocumentContext,
): ReadonlyMap<Family, ReadonlyMap<string, string>> {
  const labels = new Map<Family, ReadonlyMap<string, string>>();
  for (const [, key, family] of LAYOUT_KEYS) {
    const entries = entriesOf(childOf(node, key));
    for (const entry of entries) checkPosition(entry, layout, family, context);
    labels.set(family, new Map(entries.map((entry) => [entry.key, textOf(entry.node) ?? ''])));
  }
  return labels;
}

/** The position that an entry's key names, reported where the engine has none of that name. */
export function checkPosition(
  entry: Pick<Entry, 'key' | 'keySpan'>,
  layout: Layout,
  family: Family,
  context: DocumentContext,
): string | undefined {
  const found = findPosition(layout, family, entry.key);
  if (found !== undefined) return found;
  if (family === 'engine') {
    const message = 'it is measured once an engine and has no positions';
    return report(
      context,
      'unknown-position',
      entry.keySpan,
      message,
      'write `value:` beside `measure:`, or leave the position out',
    );
  }
  const known = positionsOf(layout, family);
  const labels = layout.labels.get(family)?.values() ?? [];
  return report(
    context,
    'unknown-position',
    entry.keySpan,
    `the engine has no ${family} ${entry.key}`,
    known.length === 0
      ? `its layout names no ${family}: add it to layout in the engine document`
      : (didYouMean(entry.key, [...known, ...labels]) ?? `it has ${known.join(', ')}`),
  );
}

function readSizes(
  node: Node | undefined,
  measures: Measures,
  context: DocumentContext,
): ReadonlyMap<string, Amount> {
  const sizes = new Map<string, Amount>();
  for (const { key, keySpan, node: value } of entriesOf(node)) {
    const known = PLAIN_SIZES.includes(key) || measures.find(key)?.quantity === 'length';
    if (!known) {
      const help = didYouMean(key, [...PLAIN_SIZES, ...measures.ids()]);
      report(
        context,
        'unknown-measure',
        keySpan,
        `${key} is not a size: bore, stroke or a length that is measured`,
        help,
      );
      continue;
    }
    const amount = readAmount(value, 'length', context);
    if (amount !== undefined) sizes.set(key, amount);
  }
  return sizes;
}
