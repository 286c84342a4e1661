import { openDocument } from '../../documents/opened.ts';
import { textAt } from '../../documents/yaml/access.ts';
import { kindIn } from '../../shell/discover/store.ts';
import type { Shop } from './shopSource.ts';

/** Engines that a name may mean, by their folders' names and the `name:` of their documents, in any case. */
export function enginesNamed(name: string, shop: Shop, engines: readonly string[]): readonly string[] {
  const whole = wholeNames(name, shop, engines);
  if (whole.length > 0) return whole;
  const sought = plain(name);
  return engines.filter((folder) =>
    [lastOf(folder), engineTitle(shop.store, folder)].some((each) => plain(each).includes(sought)),
  );
}

/** Whether it is the whole name of one, and not a part alone. */
export const isWholeName = (name: string, shop: Shop, engines: readonly string[]): boolean =>
  wholeNames(name, shop, engines).length > 0;

/** Documents are read only where no folder has that very name. */
function wholeNames(name: string, { store }: Shop, engines: readonly string[]): readonly string[] {
  const sought = plain(name);
  const byFolder = engines.filter((folder) => plain(lastOf(folder)) === sought);
  return byFolder.length > 0
    ? byFolder
    : engines.filter((folder) => plain(engineTitle(store, folder)) === sought);
}

const plain = (text: string): string => text.normalize('NFC').toLowerCase();

const lastOf = (folder: string): string => folder.slice(folder.lastIndexOf('/') + 1);

/** What its document calls it; nothing where that cannot be read. */
export function engineTitle(store: Shop['store'], folder: string): string {
  const path = store.listIn(folder).find((each) => kindIn(store, each) === 'engine');
  const read = path === undefined ? undefined : store.read(path);
  if (path === undefined || read === undefined || !read.ok) return '';
  const { root } = openDocument(path, path, read.value);
  return (root && textAt(root, 'name')) ?? '';
}
