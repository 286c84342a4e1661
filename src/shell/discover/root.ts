import { existsSync, lstatSync, readlinkSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { sniffKind } from '../../documents/yaml/sniff.ts';
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

/** Absolute, where a file or folder stands at the path; else undefined. */
export function standingAt(path: string, workingDirectory: string): string | undefined {
  const absolute = resolve(workingDirectory, path);
  return existsSync(absolute) ? absolute : undefined;
}

/** What a linked file leads to, as the link says it; undefined where the path is no link to a file. */
export const linkedFile = (path: string): string | undefined =>
  lstatSync(path).isSymbolicLink() && folderAt(path) !== path ? readlinkSync(path) : undefined;

/** An absolute path as it is known from a folder: relative, with `/`; `.` for the folder itself. */
export const pathInRoot = (root: string, absolute: string): string =>
  (relative(root, absolute) || '.').split(sep).join('/');

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
