import type { Axis } from '../../layout/axis.ts';
import { Layout, type LayoutNames } from '../../layout/layout.ts';
import type { Labels } from '../../layout/position.ts';
import type { DocumentContext } from '../amount.ts';
import { childOf, entriesOf, itemsOf, scalarOf, textOf, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import {
  reportCylinders,
  reportLooseRods,
  reportNoLabel,
  reportReserved,
  reportSameNames,
} from './layoutProblems.ts';
import { readValves } from './readValves.ts';

/** How the names along an axis are written in `layout`, and in `labels`. */
export const LAYOUT_KEYS: readonly { readonly key: string; readonly label: string; readonly axis: Axis }[] = [
  { key: 'mains', label: 'main', axis: 'main' },
  { key: 'crankpins', label: 'crankpin', axis: 'crankpin' },
  { key: 'cylinders', label: 'cylinder', axis: 'cylinder' },
  { key: 'rings', label: 'ring', axis: 'ring' },
  { key: 'valves', label: 'valve', axis: 'valve' },
  { key: 'cam_bearings', label: 'cam_bearing', axis: 'cam bearing' },
  { key: 'lobes', label: 'lobe', axis: 'lobe' },
  { key: 'banks', label: 'bank', axis: 'bank' },
  { key: 'gears', label: 'gear', axis: 'gear' },
];

/** Of a piston with three rings, from its crown down. */
const USUAL_RINGS: readonly string[] = ['top', 'second', 'oil'];

export function readLayout(root: Node, context: DocumentContext): Layout {
  const node = childOf(root, 'layout');
  const names = new Map<Axis, readonly string[]>();
  for (const { key, axis } of LAYOUT_KEYS) {
    names.set(axis, readNames(childOf(node, key)));
    reportSameNames(key, childOf(node, key), context);
    reportReserved(childOf(node, key), context);
  }
  if (childOf(node, 'rings') === undefined) names.set('ring', USUAL_RINGS);
  const pins = readPins(node, names);
  const banks = cylindersIn([childOf(node, 'banks')]);
  if (names.get('crankpin')?.length === 0) names.set('crankpin', [...new Set(pins.values())]);
  if (names.get('cylinder')?.length === 0) names.set('cylinder', [...pins.keys()]);
  const [cylinders, crankpins] = [names.get('cylinder') ?? [], names.get('crankpin') ?? []];
  const onPins = [childOf(node, 'crankpins'), childOf(node, 'pins')];
  const told = context.problems.length;
  reportCylinders('crankpin', onPins, crankpins, cylinders, context);
  // A rod whose pin is misspelt is on none: once that is put right the rest can be told.
  if (context.problems.length === told) reportLooseRods(node, pins, crankpins, cylinders, context);
  reportCylinders('bank', [childOf(node, 'banks')], names.get('bank') ?? [], cylinders, context);
  const given: Partial<LayoutNames> = {
    names,
    onHolder: new Map([['valve', readValves(childOf(node, 'valves'), cylinders, context)]]),
    ofCylinder: new Map([
      ['crankpin', pins],
      ['bank', banks],
    ]),
  };
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
): ReadonlyMap<string, string> {
  const pins = cylindersIn([childOf(layout, 'crankpins'), childOf(layout, 'pins')]);
  const [cylinders, crankpins] = [names.get('cylinder') ?? [], names.get('crankpin') ?? []];
  if (pins.size > 0 || cylinders.length !== crankpins.length) return pins;
  return new Map(cylinders.map((cylinder, index) => [cylinder, crankpins[index] ?? cylinder]));
}

/** By cylinder the key of the map that it stands under. */
const cylindersIn = (nodes: readonly (Node | undefined)[]): ReadonlyMap<string, string> =>
  new Map(
    nodes
      .flatMap(entriesOf)
      .flatMap(({ key, node }) => textsOf(node).map((cylinder) => [cylinder, key] as const)),
  );

function readLabels(node: Node | undefined, layout: Layout, context: DocumentContext): Labels {
  return new Map(
    LAYOUT_KEYS.map(({ label, axis }) => {
      const entries = entriesOf(childOf(node, label));
      for (const entry of entries) reportNoLabel(entry, axis, layout, context);
      return [axis, new Map(entries.map((entry) => [entry.key, textOf(entry.node) ?? '']))] as const;
    }),
  );
}
