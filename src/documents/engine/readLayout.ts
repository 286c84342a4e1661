import type { Axis } from '../../layout/axis.ts';
import { familyOf } from '../../layout/family.ts';
import { Layout, type LayoutNames } from '../../layout/layout.ts';
import type { Labels } from '../../layout/position.ts';
import type { DocumentContext } from '../amount.ts';
import { childOf, entriesOf, itemsOf, scalarOf, textOf, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { checkPosition } from './checkPosition.ts';
import { reportLooseRods, reportPins, reportSameNames } from './layoutProblems.ts';

/** How the names along an axis are written in `layout`, and in `labels`. */
export const LAYOUT_KEYS: readonly { readonly key: string; readonly label: string; readonly axis: Axis }[] = [
  { key: 'mains', label: 'main', axis: 'main' },
  { key: 'crankpins', label: 'crankpin', axis: 'crankpin' },
  { key: 'cylinders', label: 'cylinder', axis: 'cylinder' },
  { key: 'valves', label: 'valve', axis: 'valve' },
  { key: 'cam_bearings', label: 'cam_bearing', axis: 'cam bearing' },
];

export function readLayout(root: Node, context: DocumentContext): Layout {
  const node = childOf(root, 'layout');
  const names = new Map<Axis, readonly string[]>();
  for (const { key, axis } of LAYOUT_KEYS) {
    names.set(axis, readNames(childOf(node, key)));
    reportSameNames(key, childOf(node, key), context);
  }
  const pins = readPins(node, names);
  if (names.get('crankpin')?.length === 0) names.set('crankpin', [...new Set(pins.values())]);
  if (names.get('cylinder')?.length === 0) names.set('cylinder', [...pins.keys()]);
  const [crankpins, cylinders] = [names.get('crankpin') ?? [], names.get('cylinder') ?? []];
  const told = context.problems.length;
  reportPins([childOf(node, 'crankpins'), childOf(node, 'pins')], crankpins, cylinders, context);
  // A rod whose pin is misspelt is on none: once that is put right the rest can be told.
  if (context.problems.length === told) reportLooseRods(node, pins, crankpins, cylinders, context);
  const given: Partial<LayoutNames> = { names, ofCylinder: new Map([['crankpin', pins]]) };
  return new Layout({ ...given, labels: readLabels(childOf(root, 'labels'), new Layout(given), context) });
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
  names: ReadonlyMap<Axis, readonly string[]>,
): Map<string, string> {
  const pins = new Map<string, string>();
  for (const { key, node } of [
    ...entriesOf(childOf(layout, 'crankpins')),
    ...entriesOf(childOf(layout, 'pins')),
  ]) {
    for (const cylinder of textsOf(node)) pins.set(cylinder, key);
  }
  const [cylinders, crankpins] = [names.get('cylinder') ?? [], names.get('crankpin') ?? []];
  if (pins.size === 0 && cylinders.length === crankpins.length) {
    for (const [index, cylinder] of cylinders.entries()) pins.set(cylinder, crankpins[index] ?? cylinder);
  }
  return pins;
}

function readLabels(node: Node | undefined, layout: Layout, context: DocumentContext): Labels {
  return new Map(
    LAYOUT_KEYS.map(({ label, axis }) => {
      const entries = entriesOf(childOf(node, label));
      for (const entry of entries) checkPosition(entry, layout, familyOf(axis), context);
      return [axis, new Map(entries.map((entry) => [entry.key, textOf(entry.node) ?? '']))] as const;
    }),
  );
}
