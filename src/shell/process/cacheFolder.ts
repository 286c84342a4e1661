import { mkdirSync, statSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';
import type { Environment } from '../world.ts';

/**
 * The folder for what can be made anew, by the XDG Base Directory Specification; undefined where there is none that belongs
 * to the user alone, and then nothing is made: others could put something else there, or would not be rid of it.
 */
export function cacheFolder(
  { XDG_CACHE_HOME: named = '', HOME: home = '' }: Environment,
  ...rooms: readonly string[]
): string | undefined {
  const [base, inside] = isAbsolute(named) ? [named, []] : [home, ['.cache']];
  try {
    if (!isAbsolute(base) || !isOwn(base)) return undefined;
    return ['tenths', ...rooms].reduce(privateFolderIn, inside.reduce(ownFolderIn, base));
  } catch {
    return undefined;
  }
}

/** Throws as well where others may write in it. */
function privateFolderIn(parent: string, name: string): string {
  const folder = ownFolderIn(parent, name);
  if (isWrittenByOthers(folder)) throw new Error(`others may write in ${folder}`);
  return folder;
}

/** Throws where it is another's, no folder, or cannot be made. */
function ownFolderIn(parent: string, name: string): string {
  const folder = join(parent, name);
  if (statSync(folder, { throwIfNoEntry: false }) === undefined) mkdirSync(folder, { mode: 0o700 });
  if (!isOwn(folder)) throw new Error(`${folder} belongs to another user`);
  return folder;
}

function isOwn(path: string): boolean {
  const entry = statSync(path);
  return entry.isDirectory() && entry.uid === process.geteuid?.();
}

const isWrittenByOthers = (folder: string): boolean => (statSync(folder).mode & 0o022) !== 0;
