import { basename, dirname } from 'node:path';
import type { Outcome } from '../problem.ts';
import { thisProcess } from '../process/thisProcess.ts';
import { nodeFiles } from './fileLayer.ts';
import { type WriteReason, writeFile } from './writer.ts';

/** Writes a file that a call has named, whole or not at all, whatever stood there. The path is absolute. */
export const replaceFile = (path: string, text: string): Outcome<void, WriteReason> =>
  writeFile(
    { files: nodeFiles, self: thisProcess, root: dirname(path), path: basename(path) },
    Buffer.from(text),
    'anything',
  );
