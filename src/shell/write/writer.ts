import { dirname, join } from 'node:path';
import { checkPathBelow, type PathReason } from '../discover/pathBelow.ts';
import { readUpTo } from '../discover/safeRead.ts';
import { done, failed, type Outcome, systemCode, systemWords } from '../problem.ts';
import type { ThisProcess } from '../process/thisProcess.ts';
import { closing, publishNew, removeLeftovers, removeQuietly, stage } from './exclusive.ts';
import type { FileLayer } from './fileLayer.ts';

export type WriteReason =
  | PathReason
  | 'link'
  | 'not-a-file'
  | 'missing'
  | 'exists'
  | 'changed'
  | 'disk'
  /** The new file is in place and whole, but the disk did not confirm that it would outlive a power cut. */
  | 'unconfirmed';

/** What must stand in the file for it to be replaced: exactly these bytes, no file at all, or whatever is there. */
export type Expected = Uint8Array | 'absent' | 'anything';

/** A file that may be written, and what is needed to write it. */
export interface Destination {
  readonly files: FileLayer;
  readonly self: ThisProcess;
  /** An absolute folder. */
  readonly root: string;
  /** Relative to the root, with `/`. */
  readonly path: string;
}

/**
 * Writes one file whole or not at all: under a temporary name, read back, synced, renamed, the folder synced.
 * The mode is kept. Refuses a link, anything but a regular file, a path outside the root, and a file that does not hold
 * what is expected. Only `ok` means that the new bytes are safe; all problems but `unconfirmed` leave the old file.
 */
export function writeFile(
  destination: Destination,
  bytes: Uint8Array,
  expected: Expected,
  mayReplace: () => boolean = () => true,
): Outcome<void, WriteReason> {
  return guarded(destination.path, () => {
    const target = expected === 'absent' ? findTarget(destination) : checkTarget(destination);
    if (!target.ok) return target;
    const { path, mode } = target.value;
    if (mode === undefined && expected instanceof Uint8Array) return missing(destination.path);
    if (mode !== undefined && expected === 'absent') return exists(destination.path);
    removeLeftovers(destination.files, destination.self, path);
    const temporary = stage(destination.files, destination.self, path, bytes, mode);
    const swapped = swap(destination, temporary, path, expected, mayReplace);
    return swapped.ok ? syncFolder(destination, dirname(path)) : swapped;
  });
}

/** The bytes of the file at a place that may be written, or undefined when there is none. Follows no link. */
export function readTarget(destination: Destination): Outcome<Uint8Array | undefined, WriteReason> {
  return guarded(destination.path, () => {
    const target = checkTarget(destination);
    if (!target.ok) return target;
    return done(
      target.value.mode === undefined ? undefined : readWhole(destination.files, target.value.path),
    );
  });
}

interface Target {
  readonly path: string;
  /** Undefined when there is no file yet. */
  readonly mode: number | undefined;
}

/** The real path of a file that may be written: its folder is there, inside the root, and reached through no link. */
export function checkTarget(destination: Destination): Outcome<Target, WriteReason> {
  const target = findTarget(destination);
  if (target.ok && target.value.mode !== undefined) destination.files.requireWritable(target.value.path);
  return target;
}

/** The same for a file that shall stay as it is if it is there. */
function findTarget(destination: Destination): Outcome<Target, WriteReason> {
  const allowed = checkPathBelow(destination.path);
  if (!allowed.ok) return allowed;
  const path = join(destination.files.realPath(destination.root), destination.path);
  if (destination.files.realPath(dirname(path)) !== dirname(path)) return behindLink(destination.path);
  try {
    const { kind, mode } = destination.files.inspect(path);
    if (kind === 'link') return behindLink(destination.path);
    if (kind !== 'file') return notAFile(destination.path);
    return done({ path, mode });
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return done({ path, mode: undefined });
    throw error;
  }
}

/**
 * The last step that can refuse: the file is compared right before it is replaced, so that an edit made by another program
 * meanwhile is seen as late as possible. One that is saved between these two calls is lost: node has no call that exchanges
 * two names, and with the file moved aside first a kill in between would leave none.
 */
function swap(
  { files, path: name }: Destination,
  temporary: string,
  path: string,
  expected: Expected,
  mayReplace: () => boolean,
): Outcome<void, WriteReason> {
  if (expected === 'absent') return publishNew(files, temporary, path) ? done(undefined) : exists(name);
  let renamed = false;
  try {
    if (!mayReplace()) return changed(name);
    if (expected !== 'anything' && !holds(files, path, expected)) return changed(name);
    files.rename(temporary, path);
    renamed = true;
    return done(undefined);
  } finally {
    if (!renamed) removeQuietly(files, temporary);
  }
}

const holds = (files: FileLayer, path: string, expected: Uint8Array): boolean =>
  Buffer.compare(readWhole(files, path), expected) === 0;

function readWhole(files: FileLayer, path: string): Uint8Array {
  const handle = files.openToRead(path);
  try {
    return readUpTo(files, handle, files.inspectOpen(handle).size + 1);
  } finally {
    files.close(handle);
  }
}

// Without this the new name may be gone after a power cut. Some file systems sync no folders and say so.
function syncFolder({ files, path: name }: Destination, folder: string): Outcome<void, WriteReason> {
  try {
    const handle = files.openFolder(folder);
    closing(files, handle, () => files.sync(handle));
    return done(undefined);
  } catch (error) {
    if (['EINVAL', 'EPERM', 'EISDIR', 'ENOTSUP'].includes(systemCode(error))) return done(undefined);
    const message = `${name} is written, but the disk did not confirm it: ${systemWords(error)}`;
    return failed('unconfirmed', message, 'check the disk before switching off');
  }
}

function guarded<Value>(path: string, work: () => Outcome<Value, WriteReason>): Outcome<Value, WriteReason> {
  try {
    return work();
  } catch (error) {
    return failed('disk', `${path} was not written: ${systemWords(error)}`, 'nothing was changed');
  }
}

type Refused = Outcome<never, WriteReason>;

const behindLink = (path: string): Refused =>
  failed(
    'link',
    `${path} is a link, or lies behind one`,
    'put the file itself there; links are not written through',
  );

const notAFile = (path: string): Refused =>
  failed('not-a-file', `${path} is not a regular file`, 'only regular files are replaced');

const missing = (path: string): Refused =>
  failed('missing', `${path} is no longer there`, 'nothing was written; look for the file and try again');

const exists = (path: string): Refused =>
  failed('exists', `${path} is there already`, 'nothing was overwritten; choose another name');

const changed = (path: string): Refused =>
  failed(
    'changed',
    `${path} was changed by another program`,
    'nothing was written; read it again and repeat',
  );
