import { characteristics } from '../../../src/characteristics/registry.ts';
import { KINDS, type Kind } from '../../../src/documents/schema/kinds.ts';
import { buildSchemas } from '../../../src/documents/schema/schemas.ts';
import { BROKEN_SHOP } from './brokenShop.ts';
import { documentsByPath, freeTextsIn } from './freeTexts.ts';
import { NAME, type Shop } from './hostileShop.ts';
import { SOUND_SHOP } from './soundShop.ts';

export const schemas = buildSchemas(characteristics);

const kindOf = (document: object): Kind | undefined =>
  KINDS.find((kind) => 'kind' in document && document.kind === kind);

/** The paths at which a document holds a name that a hostile text takes the place of. */
export function attackedPaths(document: object): readonly string[] {
  const kind = kindOf(document);
  if (kind === undefined) return [];
  return freeTextsIn(schemas[kind], kind, document)
    .filter(({ text }) => text.search(NAME) >= 0)
    .map(({ path }) => path);
}

const written = new Set(
  [SOUND_SHOP, BROKEN_SHOP].flatMap((shop) => Object.values(shop)).flatMap(attackedPaths),
);

const ENGINE = { kind: 'engine', name: 'qMade', units: { length: 'in' }, layout: { cylinders: 2, mains: 2 } };

/** A text that the shops do not have yet is attacked all the same: in a document of nothing else, that its schema leads to. */
const MADE: Shop = Object.fromEntries(
  KINDS.flatMap((kind) =>
    [...documentsByPath(schemas[kind], kind)]
      .filter(([path]) => !written.has(path))
      .flatMap(([, document], index) => [
        [`engines/${kind}-${index}/engine.yaml`, ENGINE],
        [`engines/${kind}-${index}/${kind}.yaml`, document],
      ]),
  ),
);

/** Every document that has a fault. */
export const FAULTY_SHOP: Shop = { ...BROKEN_SHOP, ...MADE };
