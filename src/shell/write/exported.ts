import { basename, dirname, resolve } from 'node:path';
import { done, type Outcome } from '../problem.ts';
import { thisProcess } from '../process/thisProcess.ts';
import { nodeFiles } from './fileLayer.ts';
import { makeFolder } from './folders.ts';
import { type Destination, readTarget, writeFile } from './writer.ts';

/** Where something is put that was made from documents: a file that a call names, or files in a folder beside it. */
export interface ExportPlace {
  /** As the call names it, from the working directory. */
  readonly named: string;
  readonly workingDirectory: string;
}

/** Writes a file whole, or leaves one alone that holds the same bytes already. */
export function writeExported(
  { named, workingDirectory }: ExportPlace,
  bytes: Uint8Array,
): Outcome<'written' | 'unchanged'> {
  const absolute = resolve(workingDirectory, named);
  const destination: Destination = {
    files: nodeFiles,
    self: thisProcess,
    root: dirname(absolute),
    path: basename(absolute),
  };
  const before = readTarget(destination);
  if (before.ok && before.value !== undefined && Buffer.compare(before.value, bytes) === 0)
    return done('unchanged');
  const written = writeFile(destination, bytes, 'anything');
  return written.ok ? done('written') : written;
}

/** Makes a folder that a call names, and one in it. */
export function makeExportFolder({ named, workingDirectory }: ExportPlace, inner: string): Outcome<void> {
  const absolute = resolve(workingDirectory, named);
  return makeFolder(dirname(absolute), `${basename(absolute)}/${inner}`);
}
