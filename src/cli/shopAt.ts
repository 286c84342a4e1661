import { type Registry, registryWith } from '../characteristics/registry.ts';
import type { Engine } from '../documents/assemble.ts';
import { diagnosticsText } from '../output/runText.ts';
import { type LoadedEngine, ShopLoader } from '../shell/loadEngines.ts';
import { folderAt, pathInRoot, shopRoot, standingAt } from '../shell/root.ts';
import { type Store, workTree } from '../shell/store.ts';
import { textStyle } from '../shell/terminal.ts';
import type { World } from '../shell/world.ts';
import { UsageError } from './usage.ts';

/** A shop that is open for reading. Paths are relative to its root. */
export interface Shop {
  readonly root: string;
  readonly store: Store;
  readonly loader: ShopLoader;
  /** Reads an engine's documents, with the characteristics that serve it. */
  readonly load: (folder: string) => LoadedEngine & { readonly registry: Registry };
  readonly inRoot: (absolute: string) => string;
}

export function shopAt(root: string, world: World): Shop {
  let registry = registryWith([]);
  const store = workTree(root, world.workingDirectory);
  const loader = new ShopLoader(store, (own) => {
    registry = registryWith(own);
    return registry;
  });
  return {
    root,
    store,
    loader,
    load: (folder) => ({ ...loader.load(folder), registry }),
    inRoot: (absolute) => pathInRoot(root, absolute),
  };
}

export interface ShopPaths {
  readonly root: string;
  /** Absolute. */
  readonly selected: readonly string[];
}

/** The paths of a call by the shop they lie in. */
export function byShop(paths: readonly string[], { workingDirectory }: World): readonly ShopPaths[] {
  const shops = new Map<string, string[]>();
  for (const path of paths) {
    const absolute = standingAt(path, workingDirectory);
    if (absolute === undefined) {
      throw new UsageError(`${path} does not exist`, 'name a folder or a file of the shop');
    }
    const root = shopRoot(absolute);
    shops.set(root, [...(shops.get(root) ?? []), absolute]);
  }
  return [...shops].map(([root, selected]) => ({ root, selected }));
}

/**
 * The one engine that a call is about: a path in it, its folder's name or a unique part of that; without
 * a name the engine around the working directory, or the only one of the shop.
 */
export function engineNamed(
  name: string | undefined,
  world: World,
): { readonly shop: Shop; readonly folder: string } {
  const absolute = standingAt(name ?? '.', world.workingDirectory);
  const shop = shopAt(shopRoot(absolute ?? world.workingDirectory), world);
  if (absolute !== undefined) {
    const { engines } = shop.loader.find({ folders: [shop.inRoot(folderAt(absolute))] });
    const folder = only(engines, name ?? 'this folder');
    if (folder !== undefined) return { shop, folder };
  }
  const { engines } = shop.loader.find({ folders: ['.'] });
  const folder = only(name === undefined ? engines : enginesNamed(name, engines), name ?? 'this shop');
  if (folder !== undefined) return { shop, folder };
  const help = engines.length === 0 ? undefined : `the shop has ${engines.join(', ')}`;
  throw new UsageError(`no engine ${name === undefined ? 'here' : `is known as ${name}`}`, help);
}

export interface OpenedEngine {
  readonly engine: Engine;
  readonly registry: Registry;
  /** A document of the engine has a problem, which was told on stderr. */
  readonly hasProblems: boolean;
}

/** The engine that a call is about, read; problems with its documents are told, and stop it where nothing can be judged. */
export function openEngine(name: string | undefined, world: World): OpenedEngine {
  const { shop, folder } = engineNamed(name, world);
  const { engine, registry, diagnostics, texts } = shop.load(folder);
  world.err.write(diagnosticsText(diagnostics, texts, textStyle(world.err, world.environment, true)));
  if (engine === undefined)
    throw new UsageError(`${shop.store.shown(folder)} cannot be judged`, 'mend the documents above');
  return { engine, registry, hasProblems: diagnostics.length > 0 };
}

function only(engines: readonly string[], name: string): string | undefined {
  if (engines.length > 1) {
    throw new UsageError(`${name} may be any of several engines: ${engines.join(', ')}`, 'name one of them');
  }
  return engines[0];
}

/** A whole name before a part of one: `pump` is that engine even where a `pump-2` stands beside it. */
function enginesNamed(name: string, engines: readonly string[]): readonly string[] {
  const last = (folder: string): string => folder.slice(folder.lastIndexOf('/') + 1);
  const whole = engines.filter((folder) => last(folder) === name);
  return whole.length > 0 ? whole : engines.filter((folder) => last(folder).includes(name));
}
