import { join } from 'node:path';
import { done, failed, type Outcome, systemCode, systemWords } from '../problem.ts';
import { type FileLayer, nodeFiles } from '../write/fileLayer.ts';
import { checkPathBelow, type PathReason } from './pathBelow.ts';

export type ReadReason = PathReason | 'missing' | 'link' | 'not-a-file' | 'too-big' | 'unreadable';

/**
 * The bytes of one regular file below `root` (an absolute folder). `path` is relative to it, with `/`.
 * No part below the root may be a link, so nothing outside is ever read; a pipe or a device is refused without
 * waiting on it; at most `maxBytes` are held. Open: a folder swapped for a link between the check and the opening.
 */
export const readBelow = (
  root: string,
  path: string,
  maxBytes: number,
  files: FileLayer = nodeFiles,
): Outcome<Uint8Array, ReadReason> => readerBelow(root, files)(path, maxBytes);

/** For a run that reads many files below one root: where that really is is asked once. */
export function readerBelow(
  root: string,
  files: FileLayer = nodeFiles,
): (path: string, maxBytes: number) => Outcome<Uint8Array, ReadReason> {
  let realRoot: string | undefined;
  return (path, maxBytes) => {
    const allowed = checkPathBelow(path);
    if (!allowed.ok) return allowed;
    try {
      realRoot ??= files.realPath(root);
      const real = join(realRoot, path);
      if (files.realPath(real) !== real) return behindLink(path);
      return readOpened(files, files.openToRead(real), path, maxBytes);
    } catch (error) {
      return unreadable(path, error);
    }
  };
}

function readOpened(
  files: FileLayer,
  handle: number,
  path: string,
  maxBytes: number,
): Outcome<Uint8Array, ReadReason> {
  try {
    const state = files.inspectOpen(handle);
    if (state.kind !== 'file') return notAFile(path);
    if (state.size > maxBytes) return tooBig(path, maxBytes);
    // One byte more than announced, to notice a file that grows or that lies about its size.
    const bytes = readUpTo(files, handle, Math.min(state.size, maxBytes) + 1);
    return bytes.length > state.size ? readGrown(files, handle, path, maxBytes) : done(bytes);
  } finally {
    files.close(handle);
  }
}

function readGrown(
  files: FileLayer,
  handle: number,
  path: string,
  maxBytes: number,
): Outcome<Uint8Array, ReadReason> {
  const bytes = readUpTo(files, handle, maxBytes + 1);
  return bytes.length > maxBytes ? tooBig(path, maxBytes) : done(bytes);
}

/** Reads from the start of an open file until its end or until `limit` bytes are held. */
export function readUpTo(files: FileLayer, handle: number, limit: number): Uint8Array {
  const bytes = new Uint8Array(limit);
  let length = 0;
  while (length < limit) {
    const count = files.read(handle, bytes, length, length);
    if (count === 0) break;
    length += count;
  }
  return bytes.subarray(0, length);
}

function unreadable(path: string, error: unknown): Outcome<never, ReadReason> {
  const code = systemCode(error);
  if (code === 'ENOENT' || code === 'ENOTDIR') {
    return failed('missing', `there is no file ${path}`, 'check the path');
  }
  if (code === 'ELOOP') return behindLink(path);
  // Opening a socket.
  if (code === 'ENXIO') return notAFile(path);
  return failed('unreadable', `${path} cannot be read: ${systemWords(error)}`, 'check its permissions');
}

const behindLink = (path: string): Outcome<never, ReadReason> =>
  failed(
    'link',
    `${path} is a link, or lies behind one`,
    'put the file itself there; links are not followed',
  );

const notAFile = (path: string): Outcome<never, ReadReason> =>
  failed('not-a-file', `${path} is not a regular file`, 'only regular files are read');

const tooBig = (path: string, maxBytes: number): Outcome<never, ReadReason> =>
  failed('too-big', `${path} is larger than ${maxBytes} bytes`, 'split it into smaller documents');
