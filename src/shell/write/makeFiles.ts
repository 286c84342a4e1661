import { posix } from 'node:path';
import { type MadeFile, withMissingLines } from '../../bench/scaffold/madeFile.ts';
import { done, failed, type Outcome, type Problem, systemWords } from '../problem.ts';
import { thisProcess } from '../process/thisProcess.ts';
import { type ChangeReason, changeFile } from './change.ts';
import { closing } from './exclusive.ts';
import { nodeFiles } from './fileLayer.ts';
import { makeFolder } from './folders.ts';
import { type Destination, writeFile } from './writer.ts';

export interface MadeResult {
  readonly path: string;
  readonly what: 'made' | 'kept' | 'added to' | 'failed';
  readonly problem: Problem | undefined;
}

/** Carries a plan out, file by file; never overwrites, and one that fails does not stop the others. */
export const makeFiles = (root: string, files: readonly MadeFile[]): readonly MadeResult[] =>
  files.map((file) => {
    const result = makeFile(root, file);
    return result.ok
      ? { path: file.path, what: result.value, problem: undefined }
      : { path: file.path, what: 'failed', problem: result.problem };
  });

function makeFile(root: string, file: MadeFile): Outcome<'made' | 'kept' | 'added to'> {
  const folder = posix.dirname(file.path);
  const made = makeFolder(root, folder);
  if (!made.ok) return made;
  const destination: Destination = { files: nodeFiles, self: thisProcess, root, path: file.path };
  const written = writeFile(destination, Buffer.from(file.text), 'absent');
  if (written.ok) return file.executable ? makeExecutable(root, file.path) : done('made');
  if (written.problem.reason !== 'exists') return written;
  return file.where === 'add lines' ? addLines(destination, file.text) : done('kept');
}

function addLines(destination: Destination, wanted: string): Outcome<'kept' | 'added to'> {
  let what: 'kept' | 'added to' = 'kept';
  const result = changeFile<'kept' | ChangeReason>(destination, (before) => {
    const after = withMissingLines(Buffer.from(before ?? []).toString('utf8'), wanted);
    what = after === undefined ? 'kept' : 'added to';
    return after === undefined ? failed('kept', '', '') : done(Buffer.from(after));
  });
  return result.ok || result.problem.reason === 'kept' ? done(what) : result;
}

function makeExecutable(root: string, path: string): Outcome<'made'> {
  try {
    const handle = nodeFiles.openToRead(posix.join(root, path));
    closing(nodeFiles, handle, () => nodeFiles.setMode(handle, 0o755));
    return done('made');
  } catch (error) {
    return failed('mode', `${path} cannot be made executable: ${systemWords(error)}`, `chmod +x ${path}`);
  }
}
