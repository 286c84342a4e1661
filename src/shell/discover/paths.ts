import { basename, dirname, join, resolve } from 'node:path';
import { folderAt, pathInRoot } from './root.ts';

/** Paths of a call, which the system writes in its own way, and those of a shop, which are written with `/`. */

/** A path of a call, absolute. */
export const absolutePath = (path: string, workingDirectory: string): string =>
  resolve(workingDirectory, path);

/** Where a path of the shop stands on this system. */
export const pathOnDisk = (root: string, path: string): string => join(root, path);

/** A path of a call as the shop writes it; it may lead out of the shop, which the writer and the reader refuse. */
export const shopPath = (root: string, path: string, workingDirectory: string): string =>
  pathInRoot(root, resolve(workingDirectory, path));

/** A file of a call, by the folder that holds it and its name. */
export function fileOfCall(
  path: string,
  workingDirectory: string,
): { readonly folder: string; readonly name: string } {
  const absolute = resolve(workingDirectory, path);
  return { folder: dirname(absolute), name: basename(absolute) };
}

export const isFolder = (absolute: string): boolean => folderAt(absolute) === absolute;
