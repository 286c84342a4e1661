import { type Repository, repositoryAround } from '../../shell/git/repository.ts';
import type { World } from '../../shell/world.ts';
import { orUsage, UsageError } from '../usage.ts';

/** A word such as `HEAD~3` or `main:engines/pump`. */
export interface NamedRevision {
  readonly revision: string;
  /** Absolute, where it is in the working tree or would be; undefined where the word names no path. */
  readonly path: string | undefined;
}

/** The revisions that the words of a call name, of the repository around the working directory. */
export class Revisions {
  readonly #world: World;
  #repository: Repository | undefined;

  constructor(world: World) {
    this.#world = world;
  }

  /** Throws a UsageError where there is no repository. */
  get repository(): Repository {
    this.#repository ??= orUsage(repositoryAround('.', this.#world));
    return this.#repository;
  }

  /** To ask git once for two words that look like revisions. */
  findTogether(words: readonly string[]): void {
    const found = repositoryAround('.', this.#world);
    if (!found.ok) return;
    this.#repository ??= found.value;
    this.#repository.resolveTogether(words.map((word) => this.#split(word).revision));
  }

  /** Undefined where git knows no such commit, or there is no repository. */
  find(word: string): NamedRevision | undefined {
    try {
      const named = this.#split(word);
      return this.repository.resolve(named.revision).ok ? named : undefined;
    } catch (error) {
      if (error instanceof UsageError) return undefined;
      throw error;
    }
  }

  /** Throws a UsageError that says why it is none. */
  get(word: string): NamedRevision {
    const named = this.#split(word);
    orUsage(this.repository.commit(named.revision));
    return named;
  }

  #split(word: string): NamedRevision {
    const colon = word.indexOf(':');
    if (colon < 0) return { revision: word, path: undefined };
    const path = this.repository.pathInRevision(word.slice(colon + 1), this.#world.workingDirectory);
    return { revision: word.slice(0, colon), path };
  }
}
