import { type Axis, CYLINDER, NAMED_AXES, type NamedAxis } from '../../layout/axis.ts';
import { Layout, type LayoutNames } from '../../layout/layout.ts';
import type { Labels } from '../../layout/position.ts';
import type { DocumentContext } from '../amount.ts';
import { childOf, entriesOf, itemsOf, scalarOf, textOf, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { reportCylinders, reportNoLabel, reportReserved, reportSameNames } from './layoutProblems.ts';
import { readValves } from './readValves.ts';

export function readLayout(root: Node, context: DocumentContext): Layout {
  const node = childOf(root, 'layout');
  const names = new Map(NAMED_AXES.map((named) => [named.axis, readAxis(node, named, context)]));
  const ofCylinder = new Map(HOLDING.map((named) => [named.axis, cylindersOn(node, named, names)]));
  for (const [axis, of] of ofCylinder) nameFrom(of, axis, names);
  for (const named of HOLDING) onTheUsual(named, ofCylinder, names);
  for (const named of HOLDING) reportCylinders(node, named, names, ofCylinder, context);
  const cylinders = names.get(CYLINDER) ?? [];
  const onHolder = new Map(
    NAMED_AXES.filter(({ isByHolder }) => isByHolder).map(({ axis, keys: [key] }) => [
      axis,
      readValves(childOf(node, key), cylinders, context),
    ]),
  );
  const given: Partial<LayoutNames> = { names, onHolder, ofCylinder };
  return new Layout({ ...given, labels: readLabels(childOf(root, 'labels'), new Layout(given), context) });
}

const HOLDING = NAMED_AXES.filter(({ ofCylinders }) => ofCylinders !== undefined);

type Names = Map<Axis, readonly string[]>;

function readAxis(
  layout: Node | undefined,
  { keys: [key], usual = [] }: NamedAxis,
  context: DocumentContext,
): readonly string[] {
  const node = childOf(layout, key);
  reportSameNames(key, node, context);
  reportReserved(node, context);
  return node === undefined ? usual : readNames(node);
}

/** By cylinder what it stands on: as is written, else each on one of its own where both are counted alike. */
function cylindersOn(
  layout: Node | undefined,
  { axis, keys, ofCylinders }: NamedAxis,
  names: ReadonlyMap<Axis, readonly string[]>,
): ReadonlyMap<string, string> {
  const stated = new Map(
    keys
      .flatMap((key) => entriesOf(childOf(layout, key)))
      .flatMap(({ key, node }) => textsOf(node).map((cylinder) => [cylinder, key] as const)),
  );
  const [cylinders, others] = [names.get(CYLINDER) ?? [], names.get(axis) ?? []];
  if (ofCylinders?.every !== true || stated.size > 0 || cylinders.length !== others.length) return stated;
  return new Map(cylinders.map((cylinder, index) => [cylinder, others[index] ?? cylinder]));
}

/** Crankpins that are named with their rods alone, and cylinders that nothing else names. */
function nameFrom(of: ReadonlyMap<string, string>, axis: Axis, names: Names): void {
  if (names.get(axis)?.length === 0) names.set(axis, [...new Set(of.values())]);
  if (names.get(CYLINDER)?.length === 0) names.set(CYLINDER, [...of.keys()]);
}

/** Where nothing is stated all cylinders are on the one that is usual. */
function onTheUsual(
  { axis, usual: [only] = [] }: NamedAxis,
  ofCylinder: Map<Axis, ReadonlyMap<string, string>>,
  names: ReadonlyMap<Axis, readonly string[]>,
): void {
  if (only === undefined || names.get(axis)?.includes(only) !== true) return;
  if (ofCylinder.get(axis)?.size !== 0) return;
  ofCylinder.set(axis, new Map((names.get(CYLINDER) ?? []).map((cylinder) => [cylinder, only])));
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

function readLabels(node: Node | undefined, layout: Layout, context: DocumentContext): Labels {
  return new Map(
    NAMED_AXES.map(({ label, axis }) => {
      const entries = entriesOf(childOf(node, label));
      for (const entry of entries) reportNoLabel(entry, axis, layout, context);
      return [axis, new Map(entries.map((entry) => [entry.key, textOf(entry.node) ?? '']))] as const;
    }),
  );
}
