import { basename, dirname, join } from 'node:path';
import { readUpTo } from '../discover/safeRead.ts';
import { systemCode } from '../problem.ts';
import { crypto } from '../process/lateModules.ts';
import type { ThisProcess } from '../process/thisProcess.ts';
import type { FileLayer } from './fileLayer.ts';

/**
 * Puts bytes on the disk under a temporary name beside `path`: written whole, read back, synced.
 * Returns the temporary path. When anything fails nothing is left, as far as the disk allows, and the error is thrown.
 * With `mode` the file gets exactly that mode, else what the umask leaves.
 */
export function stage(
  files: FileLayer,
  self: ThisProcess,
  path: string,
  bytes: Uint8Array,
  mode?: number,
): string {
  const temporary = temporaryPath(self, path);
  const handle = files.createNew(temporary, mode ?? 0o666);
  try {
    closing(files, handle, () => {
      if (mode !== undefined) files.setMode(handle, mode);
      writeAll(files, handle, bytes);
      requireSame(readUpTo(files, handle, bytes.length + 1), bytes);
      files.sync(handle);
    });
    return temporary;
  } catch (error) {
    removeQuietly(files, temporary);
    throw error;
  }
}

/** Gives a staged file its name unless that is taken; says whether it got it. The temporary name goes either way. */
export function publishNew(files: FileLayer, temporary: string, path: string): boolean {
  try {
    linkOrRename(files, temporary, path);
    return true;
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false;
    throw error;
  } finally {
    removeQuietly(files, temporary);
  }
}

// A link fails when the name is taken, where a rename would replace the other file. Some file systems (those of memory
// cards) have no links: there the name is claimed with an empty file first, and a reader may see that for a moment.
function linkOrRename(files: FileLayer, temporary: string, path: string): void {
  try {
    files.link(temporary, path);
  } catch (error) {
    if (!['EPERM', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP', 'EMLINK'].includes(systemCode(error))) throw error;
    claimAndRename(files, temporary, path);
  }
}

function claimAndRename(files: FileLayer, temporary: string, path: string): void {
  const claim = files.createNew(path, 0o666);
  try {
    files.close(claim);
    files.rename(temporary, path);
  } catch (error) {
    removeQuietly(files, path);
    throw error;
  }
}

// A write may take fewer bytes than offered, as a disk that fills does, without any error.
function writeAll(files: FileLayer, handle: number, bytes: Uint8Array): void {
  for (let offset = 0; offset < bytes.length; ) {
    const count = files.write(handle, bytes, offset);
    if (count <= 0) throw diskError('the write made no progress');
    offset += count;
  }
}

// A system that claims bytes it never took has been seen to leave a truncated file behind a success.
function requireSame(found: Uint8Array, wanted: Uint8Array): void {
  if (Buffer.compare(found, wanted) !== 0) throw diskError('reading back gave other bytes');
}

const diskError = (message: string): Error => Object.assign(new Error(message), { code: 'EIO' });

/** Runs `work` and closes the handle; a failing close is an error of its own unless `work` failed already. */
export function closing(files: FileLayer, handle: number, work: () => void): void {
  try {
    work();
  } catch (error) {
    quietly(() => files.close(handle));
    throw error;
  }
  files.close(handle);
}

export const removeQuietly = (files: FileLayer, path: string): void => quietly(() => files.remove(path));

/** For tidying up after an error that is already being reported. */
export function quietly(work: () => void): void {
  try {
    work();
  } catch (error) {
    if (systemCode(error) === '') throw error;
  }
}

/** `.NAME.HOST.PID.RANDOM.tmp`: hidden from discovery, and tells whether its writer is gone. */
export function temporaryPath(self: ThisProcess, path: string): string {
  const random = crypto().randomBytes(6).toString('hex');
  return join(dirname(path), `.${basename(path)}.${self.host}.${self.pid}.${random}.tmp`);
}

/** Removes what writers of this file (and those who held or awaited its lock) left that were killed. Never fails: it is only tidying. */
export function removeLeftovers(files: FileLayer, self: ThisProcess, path: string): void {
  quietly(() => {
    for (const name of files.list(dirname(path))) {
      if (isLeftover(self, basename(path), name)) removeQuietly(files, join(dirname(path), name));
    }
  });
}

function isLeftover(self: ThisProcess, owner: string, name: string): boolean {
  const found = /^\.(?<owner>.+)\.(?<host>[\w-]+)\.(?<pid>\d+)\.[0-9a-f]{12}\.tmp$/s.exec(name)?.groups;
  if (found === undefined || found.host !== self.host) return false;
  const lock = found.owner?.replace(/\.lock(?:\.\d+)?$/, '');
  return [lock, found.owner].includes(owner) && !self.isAlive(Number(found.pid));
}
