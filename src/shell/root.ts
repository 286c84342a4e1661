import { existsSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { sniffKind } from '../documents/sniff.ts';
import { discover } from './discover.ts';
import { readBelow } from './safeRead.ts';

/**
 * The shop that a path lies in: the nearest folder at or above it that holds a shop document, else the
 * top of its git work tree, else the path's own folder. Absolute.
 */
export function shopRoot(path: string): string {
  const start = folderAt(resolve(path));
  const above = ancestors(start);
  return above.find(holdsShop) ?? above.find((folder) => existsSync(join(folder, '.git'))) ?? start;
}

export const folderAt = (path: string): string =>
  statSync(path, { throwIfNoEntry: false })?.isDirectory() === true ? path : dirname(path);

function ancestors(folder: string): readonly string[] {
  const parent = dirname(folder);
  return parent === folder ? [folder] : [folder, ...ancestors(parent)];
}

function holdsShop(folder: string): boolean {
  return discover(folder, ['.'], { below: false }).paths.some((name) => {
    const bytes = readBelow(folder, name, HEAD_BYTES);
    return bytes.ok && sniffKind(bytes.value) === 'shop';
  });
}

const HEAD_BYTES = 256 * 1024;
