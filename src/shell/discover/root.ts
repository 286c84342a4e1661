import { existsSync, lstatSync, readlinkSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { sniffKind } from '../../documents/yaml/sniff.ts';
import { discover } from './discover.ts';
import { endsAsYaml } from './entry.ts';
import { readBelow } from './safeRead.ts';

/**
 * The shop that a path lies in: the nearest folder at or above it that holds a shop document, else the
 * top of its git work tree, else the folder of the engine around it, else its own. Absolute.
 */
export function shopRoot(path: string): string {
  const start = folderAt(resolve(path));
  const above = ancestors(start);
  return (
    above.find((folder) => holds(folder, 'shop')) ??
    above.find((folder) => existsSync(join(folder, '.git'))) ??
    above.find((folder) => holds(folder, 'engine')) ??
    start
  );
}

/** Whether the shop that lies there has a document of its own. */
export const hasShopDocument = (root: string): boolean => holds(root, 'shop');

export const folderAt = (path: string): string =>
  statSync(path, { throwIfNoEntry: false })?.isDirectory() === true ? path : dirname(path);

/** Absolute, where a file or folder stands at the path; else undefined. */
export function standingAt(path: string, workingDirectory: string): string | undefined {
  const absolute = resolve(workingDirectory, path);
  const isThere = existsSync(absolute) || linkedFile(absolute) !== undefined;
  return isThere ? absolute : undefined;
}

/** What a link leads to, as it says it, whether that is there or not; undefined where the path is no link, or one to a folder. */
export const linkedFile = (path: string): string | undefined =>
  isFolderThere(dirname(path)) &&
  lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true &&
  !isFolderThere(path)
    ? readlinkSync(path)
    : undefined;

/** Of a path below a file the system says neither: it refuses to look. */
const isFolderThere = (path: string): boolean => existsSync(path) && statSync(path).isDirectory();

/** An absolute path as it is known from a folder: relative, with `/`; `.` for the folder itself. */
export const pathInRoot = (root: string, absolute: string): string =>
  (relative(root, absolute) || '.').split(sep).join('/');

function ancestors(folder: string): readonly string[] {
  const parent = dirname(folder);
  return parent === folder ? [folder] : [folder, ...ancestors(parent)];
}

/** A document of that kind, or what has its name and is not read: that is reported, and does not move the root. */
function holds(folder: string, kind: 'shop' | 'engine'): boolean {
  const { paths, entries } = discover(folder, ['.'], { below: false });
  const isNamedSo = (path: string): boolean => path.replace(/\.ya?ml$/i, '').toLowerCase() === kind;
  return (
    entries.some(({ path }) => endsAsYaml(path) && isNamedSo(path)) ||
    paths.some((name) => {
      const bytes = readBelow(folder, name, HEAD_BYTES);
      return bytes.ok && sniffKind(bytes.value) === kind;
    })
  );
}

const HEAD_BYTES = 256 * 1024;
