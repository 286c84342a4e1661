import type { OwnCharacteristic } from '../documents/engine/ownCharacteristic.ts';
import type { Measure, Measures } from '../documents/measure.ts';
import type { Layout } from '../layout/layout.ts';
import { Parts } from '../layout/part.ts';
import { block, head } from './block/blockAndHead.ts';
import { chambers } from './block/chambers.ts';
import { displacement } from './block/displacement.ts';
import { liners } from './block/liners.ts';
import { volumes } from './block/volumes.ts';
import type { BuiltIn, Characteristic } from './characteristic.ts';
import { crankShape } from './crankAndRods/crankShape.ts';
import { rodShape } from './crankAndRods/rodShape.ts';
import { shells } from './crankAndRods/shells.ts';
import { crankshaft } from './crankshaft.ts';
import { cylinders } from './cylinders.ts';
import { mains } from './mains.ts';
import { ownCharacteristic } from './own.ts';
import { ownParts } from './ownParts.ts';
import { parts } from './parts.ts';
import { pistonPins } from './pistons/pistonPins.ts';
import { pistons } from './pistons/pistons.ts';
import { rings } from './pistons/rings.ts';
import { rods } from './rods.ts';
import { running } from './running.ts';
import { valveGear } from './valveGear/valveGear.ts';
import { wholeEngine } from './wholeEngine/wholeEngine.ts';

/** What nearly every overhaul measures. */
export const usualCharacteristics: readonly Characteristic[] = [
  ...mains,
  ...rods,
  ...crankshaft,
  ...cylinders,
  ...running,
];

/** Everything that can be measured or derived, in the order of the sheet. */
export const characteristics: readonly Characteristic[] = [
  ...mains,
  ...rods,
  ...crankshaft,
  ...cylinders,
  ...crankShape,
  ...shells,
  ...rodShape,
  ...pistonPins,
  ...pistons,
  ...rings,
  ...block,
  ...liners,
  ...head,
  ...chambers,
  ...displacement,
  ...volumes,
  ...valveGear,
  ...running,
  ...wholeEngine,
];

export interface Registry extends Measures {
  readonly all: readonly Characteristic[];
  readonly find: (id: string) => Characteristic | undefined;
}

const BUILT_IN: BuiltIn = { characteristics, parts };

/**
 * Ours and those that a shop adds, each where it is measured, with the parts of an engine of that layout; a shop's own of
 * the same id stands before ours.
 */
export function registryWith(
  own: readonly OwnCharacteristic[],
  layout?: Layout,
  built: BuiltIn = BUILT_IN,
): Registry {
  const registry = registryOf(own, built);
  return layout === undefined ? registry : registryIn(registry, layout);
}

/** The same with the parts of an engine of that layout: one registry for all engines that have the same parts. */
export function registryIn(registry: Registry, layout: Layout): Registry {
  const parts = registry.parts.inLayout(layout);
  if (parts === registry.parts) return registry;
  const known = withParts.get(parts) ?? { ...registry, parts };
  withParts.set(parts, known);
  return known;
}

const withParts = new WeakMap<Parts, Registry>();

function registryOf(own: readonly OwnCharacteristic[], built: BuiltIn): Registry {
  // Most shops add none: they share one.
  if (own.length === 0 && built === BUILT_IN) {
    ours ??= newRegistry(own, built);
    return ours;
  }
  return newRegistry(own, built);
}

let ours: Registry | undefined;

function newRegistry(own: readonly OwnCharacteristic[], built: BuiltIn): Registry {
  const ids = new Map<string, Measure>([...built.characteristics, ...own].map((each) => [each.id, each]));
  const added = ownParts(own, built);
  const measures = { find: (id: string) => ids.get(id) };
  const idsOfOurs = new Set(built.characteristics.map(({ id }) => id));
  const all = [
    ...built.characteristics,
    ...own.map((each) => ({
      ...ownCharacteristic(each, measures, added.partsOf(each)),
      ...(idsOfOurs.has(each.id) ? { standsForOurs: each.places.id } : {}),
    })),
  ];
  const byId = new Map<string, Characteristic>(all.map((each) => [each.id, each]));
  return {
    all: behindWhatTheyFollow([...byId.values()]),
    parts: new Parts([...built.parts, ...added.parts]),
    find: (id) => byId.get(id),
    ids: () => [...byId.keys()],
  };
}

/** What says after what it is measured stands behind that; of several that say the same, the first comes first. */
export function behindWhatTheyFollow(all: readonly Characteristic[]): readonly Characteristic[] {
  const following = new Map<string, Characteristic[]>();
  for (const each of all) {
    if (each.after !== undefined) following.set(each.after, [...(following.get(each.after) ?? []), each]);
  }
  const withFollowing = (each: Characteristic): readonly Characteristic[] => [
    each,
    ...(following.get(each.id) ?? []).flatMap(withFollowing),
  ];
  const placed = new Set(all.filter(({ after }) => after === undefined).flatMap(withFollowing));
  // What follows something unknown, or itself, is refused elsewhere; here it must not be lost.
  return [...placed, ...all.filter((each) => !placed.has(each))];
}
