import { existsSync, statSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { done, failed, type Outcome } from '../problem.ts';
import { thisProcess } from '../process/thisProcess.ts';
import { nodeFiles } from './fileLayer.ts';
import { type Destination, readTarget, type WriteReason, writeFile } from './writer.ts';

/**
 * Writes a file that the program makes whole each time. One that stands already is written over only where it begins as such
 * a file does: `isOurs` is asked.
 */
export function writeOwnFile(
  path: string,
  bytes: Uint8Array,
  isOurs: (before: Uint8Array) => boolean,
): Outcome<void, WriteReason> {
  const folder = dirname(path);
  if (!existsSync(folder) || !statSync(folder).isDirectory())
    return failed('missing', `there is no folder ${folder}`, 'make it first');
  const destination: Destination = {
    files: nodeFiles,
    self: thisProcess,
    root: folder,
    path: basename(path),
  };
  const before = readTarget(destination);
  if (!before.ok) return before;
  if (before.value !== undefined && !isOurs(before.value))
    return failed('exists', `${path} is there already and is no sheet`, 'choose another name, or remove it');
  const written = writeFile(destination, bytes, before.value ?? 'absent');
  return written.ok ? done(undefined) : written;
}

/** A path of a call, from the folder it was made in. */
export const pathFrom = (workingDirectory: string, path: string): string => resolve(workingDirectory, path);

export const folderAndName = (path: string): { readonly folder: string; readonly name: string } => ({
  folder: dirname(path),
  name: basename(path),
});
