import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readerBelow } from '../discover/safeRead.ts';
import { crypto } from '../process/lateModules.ts';
import { digestOf } from './digestOf.ts';
import { RoomOfFolder } from './roomOfFolder.ts';

/** Of all entries together. */
const MOST_BYTES = 256 * 2 ** 20;

/** Entries are spread over so many folders, so that to hold one within its bound is little work. */
const FOLDERS = 16;

/**
 * Entries by a key, a file each. A file is written whole beside its place and then moved there, so that two runs, or one
 * that is killed, leave an old entry, a new one or none; what cannot be written is not kept, and nobody is told.
 */
export class EntryFiles {
  readonly #root: string;
  readonly #read: ReturnType<typeof readerBelow>;
  readonly #rooms = new Map<string, RoomOfFolder>();
  readonly #mostBytes: number;

  /** @param root an absolute folder that is the user's alone */
  constructor(root: string, mostBytes = MOST_BYTES) {
    this.#root = root;
    this.#read = readerBelow(root);
    this.#mostBytes = mostBytes / FOLDERS;
  }

  /** Undefined where there is none, or not what was written under this key. */
  read(key: string): string | undefined {
    const read = this.#read(pathOf(key), this.#mostBytes);
    if (!read.ok) return undefined;
    const text = Buffer.from(read.value).toString('utf8');
    const end = text.indexOf('\n');
    const content = text.slice(end + 1);
    return end >= 0 && text.slice(0, end) === sumOf(key, content) ? content : undefined;
  }

  write(key: string, content: string): void {
    const path = pathOf(key);
    const bytes = Buffer.from(`${sumOf(key, content)}\n${content}`);
    try {
      if (this.#roomAround(path).take(bytes.length)) this.#replace(path, bytes);
    } catch {
      // The disk is full, or the folder was taken away.
    }
  }

  #replace(path: string, bytes: Uint8Array): void {
    const part = join(this.#root, `${path}.${crypto().randomUUID()}.part`);
    try {
      writeFileSync(part, bytes, { flag: 'wx', mode: 0o600 });
      renameSync(part, join(this.#root, path));
    } catch (error) {
      rmSync(part, { force: true });
      throw error;
    }
  }

  #roomAround(path: string): RoomOfFolder {
    const name = path.slice(0, path.indexOf('/'));
    const known = this.#rooms.get(name);
    if (known !== undefined) return known;
    const folder = join(this.#root, name);
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const room = new RoomOfFolder(folder, this.#mostBytes);
    this.#rooms.set(name, room);
    return room;
  }
}

/** A folder by a digit of sixteen. */
function pathOf(key: string): string {
  const name = crypto().createHash('sha256').update(key).digest('hex');
  return `${name.slice(0, 1)}/${name.slice(1)}`;
}

/** Over the key as well: an entry in the place of another is not believed either. */
const sumOf = (key: string, content: string): string => digestOf([key, content]);
