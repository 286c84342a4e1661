import { ResultCache } from '../../shell/cache/resultCache.ts';
import { OpenedOnce } from '../../shell/discover/openedOnce.ts';
import type { CachePlace, World } from '../../shell/world.ts';
import type { ShopPaths } from '../shop/resolveShop.ts';
import { type Shop, shopOf } from '../shop/shopSource.ts';
import { type EngineOptions, filesNamed, type TakenUp, takeUp } from './checkEngine.ts';

/** Takes an engine up, from what an earlier run kept where that still holds, and hands it to `use`. */
type KeptEngines = <Used>(folder: string, paths: ShopPaths, use: (taken: TakenUp) => Used) => Used;

export function keptEngines(
  place: CachePlace,
  options: EngineOptions,
  { workingDirectory }: Pick<World, 'workingDirectory'>,
): KeptEngines {
  const cache = new ResultCache(place);
  // Documents that serve many engines are parsed once, though each engine asks for them anew: all that it asks is noted.
  const opened = new OpenedOnce();
  return (folder, paths, use) => {
    const { shop } = paths;
    const takenFrom = (store: Shop['store']): TakenUp => {
      const taken = takeUp(folder, { ...paths, shop: shopOf(store, shop.root, opened) }, options);
      opened.forget(folder);
      return taken;
    };
    // Paths are told from the working directory.
    const about = [workingDirectory, shop.root, ...aboutOf(folder, paths, options)];
    return cache.recall({ store: shop.store, folder, about }, takenFrom, use);
  };
}

/** All that the result depends on beside the documents. Every option is named here, or this does not compile. */
function aboutOf(folder: string, paths: ShopPaths, options: EngineOptions): readonly unknown[] {
  const shown = paths.shop.store.shown(folder);
  const { rule, judgeBy, session, all, detail, isOneOfMany, format, share, known } = options;
  const asked = {
    ...{ rule, judgeBy, session, all, detail, isOneOfMany },
    // What a format looks into is kept, and no more.
    format: [...new Set(format.map((each) => each.format))].sort(),
    share: share !== undefined,
    known: known && { ...known, findings: known.findings.filter(({ engine }) => engine === shown) },
  } satisfies Readonly<Record<keyof EngineOptions, unknown>>;
  return [filesNamed(folder, paths), asked];
}
