import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Above this share of what a folder may hold, its oldest files are removed until half of that is left. */
const FULL = 3 / 4;
const LEFT = 1 / 2;

/** So much of it one writer takes before it looks again; four may write at once. */
const TURN = 1 / 16;

/** Holds a folder within so many bytes, also where others write into it. What a killed run left there counts as well. */
export class RoomOfFolder {
  readonly #folder: string;
  readonly #most: number;
  #free = 0;

  constructor(folder: string, most: number) {
    this.#folder = folder;
    this.#most = most;
  }

  /** Whether there is room for a file of that size. */
  take(bytes: number): boolean {
    const turn = this.#most * TURN;
    if (bytes > turn) return false;
    if (bytes > this.#free) {
      this.#sweep();
      this.#free = turn;
    }
    this.#free -= bytes;
    return true;
  }

  #sweep(): void {
    const files = filesIn(this.#folder);
    let held = files.reduce((sum, { size }) => sum + size, 0);
    if (held <= this.#most * FULL) return;
    for (const { path, size } of files.sort((a, b) => a.written - b.written)) {
      if (held <= this.#most * LEFT) return;
      rmSync(path, { force: true });
      held -= size;
    }
  }
}

function filesIn(folder: string) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    // Another run may just have removed it.
    const found = statSync(path, { throwIfNoEntry: false });
    return found === undefined ? [] : [{ path, size: found.size, written: found.mtimeMs }];
  });
}
