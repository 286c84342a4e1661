import { openDocument } from '../../documents/opened.ts';
import { childOf, textAt } from '../../documents/yaml/access.ts';
import { workTree } from '../../shell/discover/store.ts';
import type { World } from '../../shell/world.ts';

/** The unit in which a shop writes plain lengths, for the examples in files that are made for it; else inches. */
export function shopLength(root: string, { workingDirectory }: World): string {
  const store = workTree(root, workingDirectory);
  for (const path of store.listIn('.')) {
    const read = store.read(path);
    const shop = read.ok ? openDocument(path, path, read.value) : undefined;
    const units = shop?.kind === 'shop' && shop.root ? childOf(shop.root, 'units') : undefined;
    const length = units && textAt(units, 'length');
    if (length !== undefined) return length;
  }
  return 'in';
}
