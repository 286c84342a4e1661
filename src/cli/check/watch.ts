import { watchingLines } from '../../output/check/watchText.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { pathInRoot } from '../../shell/discover/root.ts';
import { FolderWatch } from '../../shell/process/folderWatch.ts';
import { watchSignals } from '../../shell/process/signals.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { isUsual } from '../format/formatChoice.ts';
import { byShop } from '../shop/resolveShop.ts';
import { workTreeSource } from '../shop/shopSource.ts';
import { orUsage, problemLines, UsageError } from '../usage.ts';
import { type CheckOptions, check } from './check.ts';
import { type Look, look } from './look.ts';
import { newsLines, standingAfter } from './news.ts';

/** Ctrl-C is how it is meant to end. */
const INTERRUPTED = 130;

/** Checks, and looks again whenever a document has changed: then it prints what changed in verdict. Until it is interrupted. */
export async function watchCheck(
  paths: readonly string[],
  options: CheckOptions,
  world: World,
): Promise<number> {
  if (!options.format.every(isUsual)) throw new UsageError('--watch prints text alone', 'leave out --format');
  const watch = new FolderWatch(byShop(paths, workTreeSource(world)).map(({ shop }) => shop.root));
  const signals = watchSignals(() => watch.stop());
  const shown = (path: string): string => pathInRoot(world.workingDirectory, path);
  const style = textStyle(world.out, world.environment, options.detail);
  try {
    const folders = orUsage(watch.follow());
    let before = look(paths, options, world);
    await check(paths, options, world);
    world.out.write(writtenLines(['', ...watchingLines(folders, style)]));
    for (let changed = await watch.next(); changed !== undefined; changed = await watch.next()) {
      orUsage(watch.follow());
      const after = lookAgain(paths, options, world);
      if (after === undefined) continue;
      const news = writtenLines(newsLines(before, after, changed.map(shown), style));
      if (world.out.write(news) === false) return 2;
      before = standingAfter(before, after);
    }
    return exitCodeOf(signals.exitCode());
  } finally {
    signals.stop();
    watch.stop();
  }
}

const exitCodeOf = (signal: number | undefined): number =>
  signal === undefined || signal === INTERRUPTED ? 0 : signal;

/** Undefined while what the call names is not there: an editor, or git, may be about to put it back. */
function lookAgain(paths: readonly string[], options: CheckOptions, world: World): Look | undefined {
  try {
    return look(paths, options, world);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    world.err.write(writtenLines(problemLines(error)));
    return undefined;
  }
}
