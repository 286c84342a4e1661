import type { World } from '../../shell/world.ts';
import type { ShopPaths } from '../shop/resolveShop.ts';
import type { CheckedEngine } from './checkEngine.ts';
import { type CheckCall, type CheckerOptions, type EngineTask, engineChecker } from './engineChecker.ts';

/** Checks engines of a shop, one at a time and in their order. */
export type EngineSource = (
  folders: readonly string[],
  paths: ShopPaths,
) => AsyncIterable<CheckedEngine> | Iterable<CheckedEngine>;

/** As many engines as are checked sooner than the optimising compiler has warmed up. */
const FEW = 30;

/** As many engines as are checked sooner than threads have started. */
const MANY = 60;

interface Options extends CheckerOptions {
  readonly at?: string | undefined;
  readonly staged?: boolean | undefined;
}

/** Many engines are shared among threads; those of a commit, and one session's, are read here. */
export async function engineSource(
  paths: readonly string[],
  options: Options,
  world: World,
): Promise<EngineSource> {
  const check = await engineChecker(options, world);
  const { workerPool } = world;
  const mayShare = options.at === undefined && options.staged !== true && options.session === undefined;
  return (folders, shopPaths) => {
    if (folders.length > FEW) world.optimise?.();
    if (workerPool === undefined || !mayShare || folders.length <= MANY) {
      return checkedHere(folders, (folder) => check(folder, shopPaths));
    }
    const tasks = folders.map((folder): EngineTask => ({ root: shopPaths.shop.root, folder }));
    return workerPool<CheckCall, EngineTask, CheckedEngine>(callOf(paths, options, world), tasks);
  };
}

function* checkedHere(
  folders: readonly string[],
  checked: (folder: string) => CheckedEngine,
): Iterable<CheckedEngine> {
  for (const folder of folders) yield checked(folder);
}

const callOf = (
  paths: readonly string[],
  options: Options,
  { workingDirectory, environment, today, out: { isTTY, columns }, cache }: World,
): CheckCall => ({
  paths,
  options,
  world: {
    ...{ workingDirectory, environment: { ...environment }, today, isTTY, columns },
    cachePlace: cache?.(),
  },
});
