import type { Judgeable } from '../../compare/state.ts';
import { notJudgedLines } from '../../output/check/runText.ts';
import { writtenLines } from '../../output/escape/line.ts';
import type { Revision } from '../../shell/git/commitFiles.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { UsageError } from '../usage.ts';
import { type EngineFolder, readEngine, sourceOf } from './resolveShop.ts';
import type { Shop } from './shopSource.ts';

/** The shop around the working directory, with all of its engines that can be judged. */
export interface OpenedShop {
  readonly shop: Shop;
  readonly engines: readonly FoundEngine[];
  /** Problems with documents were told on stderr. */
  readonly hasProblems: boolean;
  /** The commit that it was read from; undefined for the working tree. */
  readonly revision: Revision | undefined;
}

export interface FoundEngine extends Judgeable {
  readonly found: EngineFolder;
}

export function openShop(at: string | undefined, world: World): OpenedShop {
  const source = sourceOf(at, '.', world);
  const shop = source.locate('.')?.shop;
  const folders = shop?.loader.find({ folders: ['.'] }).engines ?? [];
  if (shop === undefined || folders.length === 0)
    throw new UsageError(
      'no engine here',
      'tenths new engine NAME makes one: a folder with a document of kind: engine',
    );
  const reported = new Set<string>();
  const read = folders.map((folder) => {
    const found = { shop, folder };
    return { found, ...readEngine(found, world, reported) };
  });
  const style = textStyle(world.err, world.environment, true);
  const left = read.filter(({ engine }) => engine === undefined);
  const lines = left.flatMap(({ found: { folder }, faulty }) =>
    notJudgedLines(shop.store.shown(folder), faulty, style),
  );
  world.err.write(writtenLines(lines));
  return {
    shop,
    engines: read.flatMap(({ engine, registry, found }) =>
      engine === undefined ? [] : [{ engine, registry, found }],
    ),
    hasProblems: read.some(({ hasProblems, engine }) => hasProblems || engine === undefined),
    revision: source.revision,
  };
}
