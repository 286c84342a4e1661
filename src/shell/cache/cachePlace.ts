import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cacheFolder } from '../process/cacheFolder.ts';
import type { CachePlace, Environment } from '../world.ts';

/** Where the build says what it is: a digest of its files. */
const BUILD = 'build.txt';

/** Undefined where no folder is the user's alone, or the program is not built: then no result is kept. */
export function cachePlace(environment: Environment, program: string): CachePlace | undefined {
  const folder = cacheFolder(environment, 'results');
  try {
    const build = readFileSync(join(program, BUILD), 'utf8');
    return folder === undefined ? undefined : { folder, build: `${process.version} ${build}` };
  } catch {
    return undefined;
  }
}
