import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { World } from '../../shell/world.ts';
import { byShop } from '../shop/resolveShop.ts';
import { workTreeSource } from '../shop/shopSource.ts';
import type { CheckOptions } from './check.ts';
import { type JudgedFolder, judgeEngine } from './checkEngine.ts';
import { outsideEngines } from './outsideEngines.ts';
import { Tally } from './tally.ts';

/** What is found at one moment, kept so that it can be held against the next. */
export interface Look {
  /** By the folder under which each is shown. */
  readonly engines: ReadonlyMap<string, JudgedFolder>;
  readonly diagnostics: readonly Diagnostic[];
  readonly texts: ReadonlyMap<string, string>;
}

/** Reads and judges everything anew. */
export function look(paths: readonly string[], options: CheckOptions, world: World): Look {
  const tally = new Tally(options.strict);
  const engines = new Map<string, JudgedFolder>();
  const diagnostics: Diagnostic[] = [];
  const texts = new Map<string, string>();
  const note = (found: Pick<JudgedFolder, 'diagnostics' | 'texts'>): void => {
    diagnostics.push(...tally.newDiagnostics(found.diagnostics));
    for (const [path, text] of found.texts) texts.set(path, text);
  };
  for (const shopPaths of byShop(paths, workTreeSource(world))) {
    const { shop, selected } = shopPaths;
    const found = shop.loader.find({ folders: selected.map(({ folder }) => folder) });
    for (const folder of found.engines) {
      const judged = judgeEngine(folder, shopPaths, options);
      engines.set(judged.folder, judged);
      note(judged);
    }
    for (const each of outsideEngines(found, shopPaths)) note(each);
  }
  return { engines, diagnostics, texts };
}
