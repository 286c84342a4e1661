import { type FSWatcher, watch } from 'node:fs';
import { openFolders } from '../discover/discover.ts';
import { isOpenFolder } from '../discover/entry.ts';
import { done, failed, type Outcome, systemWords } from '../problem.ts';

/** So long nothing must change before what did is reported: a save is several writes, a commit that is checked out many. */
const SETTLING_MS = 100;

/**
 * Tells of files and folders that changed in and below some folders, once writing has settled. Each folder is watched by
 * itself: to watch a tree is not offered everywhere, and misses what is renamed into it where it is.
 */
export class FolderWatch {
  readonly #tops: readonly string[];
  readonly #watchers = new Map<string, FSWatcher>();
  readonly #changed = new Set<string>();
  #settling: NodeJS.Timeout | undefined;
  #hasSettled = false;
  #isStopped = false;
  #wake = (): void => {};

  /** Absolute folders. */
  constructor(tops: readonly string[]) {
    this.#tops = tops;
  }

  /** How many folders are watched from now on: those that are there. To be called before they are read. */
  follow(): Outcome<number> {
    const folders = new Set(this.#tops.flatMap(openFolders));
    for (const [folder] of this.#watchers) if (!folders.has(folder)) this.#leave(folder);
    try {
      for (const folder of folders) this.#enter(folder);
    } catch (error) {
      const message = `${folders.size} folders cannot be watched: ${systemWords(error)}`;
      return failed('unwatched', message, 'name one engine, or raise the limit of the system');
    }
    return done(this.#watchers.size);
  }

  /** The paths that changed since it was asked before, absolute and sorted; undefined once it is stopped. */
  async next(): Promise<readonly string[] | undefined> {
    while (!this.#hasSettled && !this.#isStopped) {
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
      });
    }
    if (this.#isStopped) return undefined;
    const paths = [...this.#changed].sort();
    this.#changed.clear();
    this.#hasSettled = false;
    return paths;
  }

  stop(): void {
    this.#isStopped = true;
    clearTimeout(this.#settling);
    for (const [folder] of this.#watchers) this.#leave(folder);
    this.#wake();
  }

  #enter(folder: string): void {
    if (this.#watchers.has(folder)) return;
    const watcher = watch(folder, (_, name) => this.#note(folder, name));
    // A folder that is removed ends its watch; the one above it tells.
    watcher.on('error', () => this.#leave(folder));
    this.#watchers.set(folder, watcher);
  }

  #leave(folder: string): void {
    this.#watchers.get(folder)?.close();
    this.#watchers.delete(folder);
  }

  /** Without a name anything may have changed; a lock is held while something is still written. */
  #note(folder: string, name: string | null): void {
    if (this.#isStopped || (name !== null && (!isOpenFolder(name) || name.endsWith('.lock')))) return;
    const path = name === null ? folder : `${folder}/${name}`;
    this.#changed.add(path);
    // A folder of this name may be another by now.
    this.#leave(path);
    clearTimeout(this.#settling);
    this.#settling = setTimeout(() => {
      this.#hasSettled = true;
      this.#wake();
    }, SETTLING_MS);
  }
}
