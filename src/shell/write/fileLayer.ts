import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fstatSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  readdirSync,
  readSync,
  realpathSync,
  renameSync,
  type Stats,
  unlinkSync,
  writeSync,
} from 'node:fs';

export interface FileState {
  readonly kind: 'file' | 'folder' | 'link' | 'other';
  /** Permission bits only. */
  readonly mode: number;
  /** In bytes. */
  readonly size: number;
}

/**
 * Every call that the writer and the lock make to the file system, so that a test can fail each one in turn.
 * All are synchronous: a signal's handler cannot run between the steps of a write.
 * All throw the system's error.
 */
export interface FileLayer {
  /** Follows no link. */
  readonly inspect: (path: string) => FileState;
  readonly inspectOpen: (handle: number) => FileState;
  readonly realPath: (path: string) => string;
  /** Follows no link in the last part and never waits for the other end of a pipe. */
  readonly openToRead: (path: string) => number;
  /** Fails when the name is taken, even by a link. Open for reading back too. */
  readonly createNew: (path: string, mode: number) => number;
  /** For lines at the end of a file that stands; follows no link in the last part. */
  readonly openToAppend: (path: string) => number;
  readonly openFolder: (path: string) => number;
  /** How many bytes were read at `position` of the file into `into` from `offset`; 0 at the end. */
  readonly read: (handle: number, into: Uint8Array, offset: number, position: number) => number;
  /** How many of the bytes from `offset` on were taken: it may be fewer than offered. */
  readonly write: (handle: number, bytes: Uint8Array, offset: number) => number;
  readonly setMode: (handle: number, mode: number) => void;
  /** Returns when the disk holds what was written. */
  readonly sync: (handle: number) => void;
  readonly close: (handle: number) => void;
  /** A second name for a file; fails when the name is taken. */
  readonly link: (from: string, to: string) => void;
  readonly rename: (from: string, to: string) => void;
  readonly remove: (path: string) => void;
  readonly list: (folder: string) => readonly string[];
  readonly requireWritable: (path: string) => void;
}

// Windows has neither flag.
const READ_FLAGS = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);

const APPEND_FLAGS = constants.O_RDWR | constants.O_APPEND | (constants.O_NOFOLLOW ?? 0);

export const nodeFiles: FileLayer = {
  inspect: (path) => stateOf(lstatSync(path)),
  inspectOpen: (handle) => stateOf(fstatSync(handle)),
  realPath: (path) => realpathSync.native(path),
  openToRead: (path) => openSync(path, READ_FLAGS),
  createNew: (path, mode) => openSync(path, 'wx+', mode),
  openToAppend: (path) => openSync(path, APPEND_FLAGS),
  openFolder: (path) => openSync(path, 'r'),
  read: (handle, into, offset, position) => readSync(handle, into, offset, into.length - offset, position),
  write: (handle, bytes, offset) => writeSync(handle, bytes, offset, bytes.length - offset),
  setMode: (handle, mode) => fchmodSync(handle, mode),
  sync: (handle) => fsyncSync(handle),
  close: (handle) => closeSync(handle),
  link: (from, to) => linkSync(from, to),
  rename: (from, to) => renameSync(from, to),
  remove: (path) => unlinkSync(path),
  list: (folder) => readdirSync(folder),
  requireWritable: (path) => accessSync(path, constants.W_OK),
};

function stateOf(stats: Stats): FileState {
  return { kind: kindOf(stats), mode: stats.mode & 0o7777, size: stats.size };
}

function kindOf(stats: Stats): FileState['kind'] {
  if (stats.isFile()) return 'file';
  if (stats.isDirectory()) return 'folder';
  return stats.isSymbolicLink() ? 'link' : 'other';
}
