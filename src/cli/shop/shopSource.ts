import { type Registry, registryIn, registryWith } from '../../characteristics/registry.ts';
import { oncePer } from '../../checks/once.ts';
import type { OwnCharacteristic } from '../../documents/engine/ownCharacteristic.ts';
import type { Layout } from '../../layout/layout.ts';
import { type LoadedEngine, ShopLoader } from '../../shell/discover/loadEngines.ts';
import type { OpenedOnce } from '../../shell/discover/openedOnce.ts';
import { folderAt, linkedFile, pathInRoot, shopRoot, standingAt } from '../../shell/discover/root.ts';
import { type Store, workTree } from '../../shell/discover/store.ts';
import type { Revision } from '../../shell/git/commitFiles.ts';
import type { World } from '../../shell/world.ts';
import { UsageError } from '../usage.ts';

/** A shop that is open for reading. Paths are relative to its root. */
export interface Shop {
  /** Absolute; of a commit where it would be if that were checked out. */
  readonly root: string;
  readonly store: Store;
  readonly loader: ShopLoader;
  /** Reads an engine's documents, with the characteristics that serve it. */
  readonly load: (folder: string) => LoadedEngine & { readonly registry: Registry };
}

const registryOf = oncePer((own: readonly OwnCharacteristic[]): Registry => registryWith(own));

/** One for one engine, so that who has judged the engine by it need not do it again. */
const registryFor = (own: readonly OwnCharacteristic[], layout: Layout | undefined): Registry =>
  layout === undefined ? registryOf(own) : registryIn(registryOf(own), layout);

export function shopOf(store: Store, root: string, opened?: OpenedOnce): Shop {
  const loader = new ShopLoader(store, registryFor, opened);
  const load = (folder: string) => {
    const loaded = loader.load(folder);
    return { ...loaded, registry: registryFor(loaded.own, loaded.engine?.document.layout) };
  };
  return { root, store, loader, load };
}

/** A path of a call, found in its shop. */
export interface Located {
  readonly shop: Shop;
  /** The folder that it is or lies in. */
  readonly folder: string;
  /** The file that it names. */
  readonly file: string | undefined;
}

/** Where shops are looked for: the working tree, or a commit. */
export interface ShopSource {
  /** Undefined where there is no such path. One shop stays one shop however often it is asked for. */
  readonly locate: (path: string) => Located | undefined;
  /** Undefined for the working tree, and for what is staged. */
  readonly revision: Revision | undefined;
}

/** A document that is a link is passed over everywhere else; named in a call it would stand for the whole engine. */
function refuseLinkedFile(path: string, absolute: string): void {
  const target = linkedFile(absolute);
  if (target === undefined) return;
  throw new UsageError(`${path} is a link, and links are not followed`, `name ${target} itself`);
}

/** `opened` is shared with the source that it is compared with. */
export function workTreeSource({ workingDirectory, ...world }: World, opened = world.opened): ShopSource {
  const shops = new Map<string, Shop>();
  return {
    revision: undefined,
    locate: (path) => {
      const absolute = standingAt(path, workingDirectory);
      if (absolute === undefined) return undefined;
      refuseLinkedFile(path, absolute);
      const root = shopRoot(absolute);
      const shop = shops.get(root) ?? shopOf(workTree(root, workingDirectory), root, opened);
      shops.set(root, shop);
      const inRoot = (each: string): string => pathInRoot(root, each);
      const folder = folderAt(absolute);
      return { shop, folder: inRoot(folder), file: folder === absolute ? undefined : inRoot(absolute) };
    },
  };
}
