import { writtenLines } from '../../output/escape/line.ts';
import type { World } from '../../shell/world.ts';

/** Nobody wonders sooner, and nobody wants to be told more often. */
const PATIENCE_MS = 1000;

/** How far a run through many engines has come, to somebody who waits at a terminal: whole lines, that need no cleaning up. */
export class Progress {
  readonly #count: number;
  readonly #world: World;
  #reportedAt: number;

  constructor(count: number, world: World) {
    this.#count = count;
    this.#world = world;
    this.#reportedAt = world.elapsed?.() ?? 0;
  }

  /** To be called before each engine, with how many are done. */
  report(done: number): void {
    const { err, elapsed } = this.#world;
    if (err.isTTY !== true || elapsed === undefined || elapsed() - this.#reportedAt < PATIENCE_MS) return;
    this.#reportedAt = elapsed();
    err.write(writtenLines([`${done} of ${this.#count} engines`]));
  }
}
