import { type Axis, HOLDER } from './axis.ts';
import { ENGINE, type Family, familyOf, STEP } from './family.ts';
import type { Layout } from './layout.ts';
import type { Position } from './position.ts';
import { findPosition } from './readKey.ts';

/**
 * The positions of a family that belong to a position of another, in the order of the layout: the crankpin of a
 * cylinder, the rings of a cylinder, the mains beside a crankpin. One to many gives all of them; none where the layout
 * does not say. Undefined where nothing relates the two families.
 */
export function relate(layout: Layout, position: Position, family: Family): readonly Position[] | undefined {
  const known = remembered(layout, family);
  if (known.has(position)) return known.get(position);
  const found = related(layout, position, family);
  known.set(position, found);
  return found;
}

/** The one position that belongs to another; undefined where there is none, or more than one. */
export function relateOne(layout: Layout, position: Position, family: Family): Position | undefined {
  if (position.family === family) return position;
  const [first, second] = relate(layout, position, family) ?? [];
  return second === undefined ? first : undefined;
}

/** Whether positions of one family lead to positions of another, in any layout. */
export const areRelated = (from: Family, to: Family): boolean =>
  from === to ||
  isOfWholeEngine(from, to) ||
  to.axes.every((axis) => isOpen(axis, from) || sourceOf(axis, from) !== undefined);

/** The position before and the one after along its last axis, as far as there are any. */
export const neighbours = (layout: Layout, position: Position): readonly Position[] => [
  ...stepAlong(layout, position, -1),
  ...stepAlong(layout, position, 1),
];

/** The next position along the last axis, or with -1 the one before; none at the end of the row. */
export function stepAlong(layout: Layout, position: Position, step: 1 | -1): readonly Position[] {
  const row = layout
    .positionsOf(position.family)
    .filter(({ coordinates }) =>
      coordinates.slice(0, -1).every((name, index) => name === position.coordinates[index]),
    );
  const at = row.indexOf(position);
  const found = at < 0 ? undefined : row[at + step];
  return found === undefined ? [] : [found];
}

type Related = Map<Position, readonly Position[] | undefined>;

/** What belongs together does not change, and every reading asks for it. */
const memory = new WeakMap<Layout, Map<Family, Related>>();

function remembered(layout: Layout, family: Family): Related {
  const families = memory.get(layout) ?? new Map<Family, Related>();
  memory.set(layout, families);
  const known = families.get(family) ?? new Map();
  families.set(family, known);
  return known;
}

function related(layout: Layout, position: Position, family: Family): readonly Position[] | undefined {
  if (position.family === family) return [position];
  if (!areRelated(position.family, family)) return undefined;
  const all = layout.positionsOf(family);
  if (isOfWholeEngine(position.family, family)) return all;
  const wanted = family.axes.map((axis) =>
    isOpen(axis, position.family) ? undefined : namesFrom(layout, position, axis),
  );
  return all.filter(({ coordinates }) =>
    coordinates.every((name, index) => wanted[index]?.includes(name) ?? true),
  );
}

/** Of the whole engine is everything but the steps of its assembly, and each of them is of the engine. */
const isOfWholeEngine = (from: Family, to: Family): boolean =>
  (from === ENGINE && to !== STEP) || to === ENGINE;

/** Whether all names along an axis belong: every ring of a cylinder. */
const isOpen = (axis: Axis, from: Family): boolean =>
  HOLDER[axis] !== undefined && sourceOf(axis, from) === undefined;

/** Which names along an axis belong to one name along another, where a layout ties the two; the name is one of a position. */
type Tie = (layout: Layout, name: string, of: Position) => readonly string[];

const onCylinder =
  (axis: Axis): Tie =>
  ({ given }, cylinder) => {
    const name = given.ofCylinder.get(axis)?.get(cylinder);
    return name === undefined ? [] : [name];
  };

const cylindersOf =
  (axis: Axis): Tie =>
  ({ given }, name) =>
    [...(given.ofCylinder.get(axis) ?? [])].flatMap(([cylinder, of]) => (of === name ? [cylinder] : []));

/** Pins and mains take turns along a crankshaft; one with fewer mains is not counted so. */
const alongCrankshaft =
  (from: Axis, to: Axis, steps: readonly number[]): Tie =>
  (layout, name) => {
    const [mains, pins] = [layout.namesAlong('main'), layout.namesAlong('crankpin')];
    if (mains.length !== pins.length + 1) return [];
    const at = layout.namesAlong(from).indexOf(name);
    return at < 0 ? [] : steps.flatMap((step) => layout.namesAlong(to)[at + step] ?? []);
  };

const VALVE = familyOf('valve');

/** A lobe that has the name of a valve lifts that valve: `1E`, or as the layout writes it. No order of lobes is assumed. */
const valveOf = (layout: Layout, lobe: string): Position | undefined => findPosition(layout, VALVE, lobe);

const valveName =
  (axis: Axis): Tie =>
  (layout, lobe) => {
    const name = valveOf(layout, lobe)?.coordinates[VALVE.axes.indexOf(axis)];
    return name === undefined ? [] : [name];
  };

/** Of a valve its lobe, of a cylinder the lobes of its valves. */
const lobesOf: Tie = (layout, _, { family, coordinates }) =>
  layout.namesAlong('lobe').filter((lobe) => {
    const valve = valveOf(layout, lobe);
    return valve?.coordinates.every((name, index) => {
      const at = family.axes.indexOf(VALVE.axes[index] ?? 'engine');
      return at < 0 || coordinates[at] === name;
    });
  });

const TIES: readonly (readonly [from: Axis, to: Axis, tie: Tie])[] = [
  ['cylinder', 'crankpin', onCylinder('crankpin')],
  ['crankpin', 'cylinder', cylindersOf('crankpin')],
  ['cylinder', 'bank', onCylinder('bank')],
  ['bank', 'cylinder', cylindersOf('bank')],
  ['lobe', 'cylinder', valveName('cylinder')],
  ['lobe', 'valve', valveName('valve')],
  ['cylinder', 'lobe', lobesOf],
  ['crankpin', 'main', alongCrankshaft('crankpin', 'main', [0, 1])],
  ['main', 'crankpin', alongCrankshaft('main', 'crankpin', [-1, 0])],
];

interface Source {
  readonly index: number;
  readonly namesOf: Tie;
}

const ITSELF: Tie = (_, name) => [name];

/** Which coordinate of a family says what along another axis is meant; undefined where none does. */
function sourceOf(axis: Axis, { axes }: Family): Source | undefined {
  if (axes.includes(axis)) return { index: axes.indexOf(axis), namesOf: ITSELF };
  const [tie] = TIES.filter(([from, to]) => to === axis && axes.includes(from));
  return tie && { index: axes.indexOf(tie[0]), namesOf: tie[2] };
}

function namesFrom(layout: Layout, position: Position, axis: Axis): readonly string[] {
  const source = sourceOf(axis, position.family);
  const name = source && position.coordinates[source.index];
  return source === undefined || name === undefined ? [] : source.namesOf(layout, name, position);
}
