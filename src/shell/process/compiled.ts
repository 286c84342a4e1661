import { readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { Script } from 'node:vm';

/** What the build makes of a module: an expression that is this function. It asks for modules of node alone. */
type Wrapped = (
  require: typeof process.getBuiltinModule,
  module: { exports: unknown },
  dirname: string,
) => void;

/** Where the build keeps what V8 compiled of a file. */
export const cacheOf = (file: string): string => `${file}.cache`;

/**
 * Runs a file of the bundle from V8's cache of its compiled code: to compile it anew at each start would take longer than
 * to judge an engine. A cache that is not there, or that another version of node has made, costs that time and no more.
 */
export function loadCompiled(file: string): { readonly exports: unknown; readonly script: Script } {
  const cachedData = cacheIn(cacheOf(file));
  const script = new Script(readFileSync(file, 'latin1'), {
    filename: file,
    ...(cachedData === undefined ? {} : { cachedData }),
  });
  const module = { exports: {} };
  (script.runInThisContext() as Wrapped)(process.getBuiltinModule, module, dirname(file));
  return { exports: module.exports, script };
}

function cacheIn(file: string): Buffer | undefined {
  try {
    return readFileSync(file);
  } catch {
    return undefined;
  }
}
