import type { OwnCharacteristic } from '../documents/engine/shop.ts';
import type { Measure, Measures } from '../documents/measure.ts';
import { Parts } from '../layout/part.ts';
import type { BuiltIn, Characteristic } from './characteristic.ts';
import { crankshaft } from './crankshaft.ts';
import { cylinders } from './cylinders.ts';
import { mains } from './mains.ts';
import { ownCharacteristic } from './own.ts';
import { ownParts } from './ownParts.ts';
import { parts } from './parts.ts';
import { rods } from './rods.ts';
import { running } from './running.ts';

/** Everything that can be measured or derived, in the order of the sheet. */
export const characteristics: readonly Characteristic[] = [
  ...mains,
  ...rods,
  ...crankshaft,
  ...cylinders,
  ...running,
];

export interface Registry extends Measures {
  readonly all: readonly Characteristic[];
  readonly find: (id: string) => Characteristic | undefined;
}

const BUILT_IN: BuiltIn = { characteristics, parts };

/** Ours, and after them those that a shop adds; a shop's own of the same id stands before ours. */
export function registryWith(own: readonly OwnCharacteristic[], built: BuiltIn = BUILT_IN): Registry {
  const ids = new Map<string, Measure>([...built.characteristics, ...own].map((each) => [each.id, each]));
  const added = ownParts(own, built);
  const measures: Measures = {
    parts: new Parts([...built.parts, ...added.parts]),
    find: (id) => ids.get(id),
    ids: () => [...ids.keys()],
  };
  const all = [
    ...built.characteristics,
    ...own.map((each) => ownCharacteristic(each, measures, added.partsOf(each))),
  ];
  const byId = new Map(all.map((each) => [each.id, each]));
  return {
    all: [...byId.values()],
    parts: measures.parts,
    find: (id) => byId.get(id),
    ids: () => [...byId.keys()],
  };
}
