import { createRequire } from 'node:module';
import { compilingWhole } from './compiler.ts';
import { loadFromKeptCode, needsKeptCode } from './keptCode.ts';

/** Since 22.1 node keeps what it has compiled, of each version of its own, and believes nothing whose sum is another. */
interface KeepingNode {
  readonly enableCompileCache: (folder: string) => unknown;
  /** Undefined where nothing is kept: the user may have named a folder for it, or forbidden it. */
  readonly getCompileCacheDir: () => string | undefined;
}

/**
 * The exports of a file of the bundle, compiled by an earlier run where that is possible: to compile it anew at each start
 * takes longer than to judge an engine.
 * @param folder where node may keep what it has compiled
 */
export function loadCompiled(file: string, folder: string | undefined): object {
  if (needsKeptCode) return loadFromKeptCode(file).exports;
  const node = process.getBuiltinModule('node:module') as unknown as KeepingNode;
  if (folder !== undefined) node.enableCompileCache(folder);
  // Node keeps what was compiled as the file was loaded, so functions that are called later have to be compiled by then.
  return node.getCompileCacheDir() === undefined ? load(file) : compilingWhole(() => load(file));
}

/** As node does it. */
export const load = (file: string): object => createRequire(file)(file);
