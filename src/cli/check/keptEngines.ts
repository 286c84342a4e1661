import type { CachePlace, World } from '../../shell/world.ts';
import { KeptResults } from '../shop/keptResults.ts';
import type { ShopPaths } from '../shop/resolveShop.ts';
import { type EngineOptions, filesNamed, type TakenUp, takeUp } from './checkEngine.ts';

/** Takes an engine up, from what an earlier run kept where that still holds, and hands it to `use`. */
type KeptEngines = <Used>(folder: string, paths: ShopPaths, use: (taken: TakenUp) => Used) => Used;

export function keptEngines(
  place: CachePlace,
  options: EngineOptions,
  { workingDirectory }: Pick<World, 'workingDirectory'>,
): KeptEngines {
  const kept = new KeptResults(place);
  return (folder, paths, use) => {
    // Paths are told from the working directory.
    const about = [workingDirectory, ...aboutOf(folder, paths, options)];
    return kept.recall(
      { shop: paths.shop, folder, about },
      (shop) => takeUp(folder, { ...paths, shop }, options),
      use,
    );
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
