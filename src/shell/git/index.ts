import { lstatSync, type Stats } from 'node:fs';
import { join } from 'node:path';
import { readBelow } from '../discover/safeRead.ts';
import type { GitPlace } from './process.ts';

/** What git noted of a file when it last read it: a file that still looks so still has that content. */
export interface NotedFile {
  /** The blob's id. */
  readonly oid: string;
  /** In bytes, modulo 2³². */
  readonly size: number;
  /** Milliseconds since 1970, as `Stats` has them. */
  readonly modified: number;
  readonly changed: number;
  /** The inode's number, modulo 2³². */
  readonly inode: number;
}

/**
 * The regular files of a working tree that git has noted in its index, by their paths from the top. A file that was written
 * as late as the index is left out: it may have been written again since and look the same.
 * Source: gitformat-index(5) and racy-git of the git documentation; versions 2 and 3. None in any other version, in a linked
 * working tree, and in a file that is no such index.
 */
export function notedFiles(place: GitPlace, idBytes: number): ReadonlyMap<string, NotedFile> {
  const none = new Map<string, NotedFile>();
  const folder = join(place.folder, '.git');
  if (place.bare || !lstatSync(folder).isDirectory()) return none;
  // Asked for before it is read: the earlier it seems to be written, the less of it is believed.
  const written = lstatSync(join(folder, 'index'), { throwIfNoEntry: false })?.mtimeMs;
  const read = readBelow(folder, 'index', MOST_INDEX_BYTES);
  if (written === undefined || !read.ok) return none;
  return entriesOf(read.value, idBytes, written) ?? none;
}

/** Of some hundred thousand files. */
const MOST_INDEX_BYTES = 64 * 2 ** 20;

/** Whether a file is, by all that git goes by, the one that it noted. */
export const looksAsNoted = (file: Stats, noted: NotedFile): boolean =>
  file.isFile() &&
  file.size % 2 ** 32 === noted.size &&
  file.mtimeMs === noted.modified &&
  file.ctimeMs === noted.changed &&
  file.ino % 2 ** 32 === noted.inode;

// Offsets in an entry.
const CHANGED = 0;
const MODIFIED = 8;
const INODE = 20;
const MODE = 24;
const SIZE = 36;
const ID = 40;

const HEADER_BYTES = 12;
const HAS_MORE_FLAGS = 0x4000;
const STAGE = 0x3000;
const REGULAR = 0o10;

/** Undefined where the bytes are no index of a version that is known here. */
function entriesOf(bytes: Uint8Array, idBytes: number, written: number): Map<string, NotedFile> | undefined {
  const index = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  if (index.length < HEADER_BYTES || index.toString('latin1', 0, 4) !== 'DIRC') return undefined;
  const version = view.getUint32(4);
  if (version !== 2 && version !== 3) return undefined;
  const time = (at: number): number => view.getUint32(at) * 1000 + view.getUint32(at + 4) / 1e6;
  const entries = new Map<string, NotedFile>();
  let at = HEADER_BYTES;
  for (let left = view.getUint32(8); left > 0; left--) {
    const flagsAt = at + ID + idBytes;
    if (flagsAt + 2 > index.length) return undefined;
    const flags = view.getUint16(flagsAt);
    const nameAt = flagsAt + ((flags & HAS_MORE_FLAGS) === 0 ? 2 : 4);
    const end = index.indexOf(0, nameAt);
    if (end < 0) return undefined;
    const modified = time(at + MODIFIED);
    const isFile = (flags & STAGE) === 0 && view.getUint32(at + MODE) >>> 12 === REGULAR;
    if (isFile && modified < written) {
      entries.set(index.toString('utf8', nameAt, end), {
        oid: index.toString('hex', at + ID, flagsAt),
        size: view.getUint32(at + SIZE),
        modified,
        changed: time(at + CHANGED),
        inode: view.getUint32(at + INODE),
      });
    }
    // One to eight zeros fill an entry up to a multiple of eight bytes.
    at += (end - at + 8) & ~7;
  }
  return entries;
}
