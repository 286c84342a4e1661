import type { CachePlace, World } from '../../shell/world.ts';
import { byShop, type ShopPaths } from '../shop/resolveShop.ts';
import { workTreeSource } from '../shop/shopSource.ts';
import { type CheckedEngine, type EngineOptions, takeUp, withParts } from './checkEngine.ts';
import { shownParts } from './engineParts.ts';
import { keptEngines } from './keptEngines.ts';

export interface CheckerOptions extends EngineOptions {
  /** False where every engine is to be worked out anew. */
  readonly cache?: boolean | undefined;
}

export type EngineChecker = (folder: string, paths: ShopPaths) => CheckedEngine;

/** Judges engines, or takes what an earlier run kept of them. */
export async function engineChecker(options: CheckerOptions, world: World): Promise<EngineChecker> {
  const partsOf = await shownParts(options, world);
  const place = options.cache === false ? undefined : world.cache?.();
  if (place === undefined) return (folder, paths) => withParts(takeUp(folder, paths, options), partsOf);
  const kept = keptEngines(place, options, world);
  return (folder, paths) => kept(folder, paths, (taken) => withParts(taken, partsOf));
}

/** What a thread must know to check engines of one shop as the run would. */
export interface CheckCall {
  readonly paths: readonly string[];
  readonly options: CheckerOptions;
  readonly world: Pick<World, 'workingDirectory' | 'environment' | 'today'> & {
    readonly isTTY: boolean | undefined;
    readonly columns: number | undefined;
    readonly cachePlace: CachePlace | undefined;
  };
}

/** An engine of a call's shops: by the shop's root, and by its folder there. */
export interface EngineTask {
  readonly root: string;
  readonly folder: string;
}

/** Opens the shops of a call anew, in a thread of its own; what formats make of an engine goes back to the run. */
export async function threadChecker({
  paths,
  options,
  world,
}: CheckCall): Promise<(task: EngineTask) => CheckedEngine> {
  const { isTTY, columns, cachePlace, ...around } = world;
  const out = {
    ...(isTTY === undefined ? {} : { isTTY }),
    ...(columns === undefined ? {} : { columns }),
    write: () => undefined,
  };
  const here: World = { ...around, out, err: out, cache: () => cachePlace };
  const shops = new Map(byShop(paths, workTreeSource(here)).map((each) => [each.shop.root, each]));
  const check = await engineChecker(options, here);
  return ({ root, folder }) => {
    const shop = shops.get(root);
    if (shop === undefined) throw new Error(`no shop at ${root}`);
    return check(folder, shop);
  };
}
