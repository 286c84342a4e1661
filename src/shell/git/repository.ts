import { existsSync, realpathSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { folderAt, pathInRoot } from '../discover/root.ts';
import { shownPath } from '../discover/store.ts';
import { done, type Outcome } from '../problem.ts';
import type { World } from '../world.ts';
import { BlobContents, type CommitFiles, openCommit, openStaged, type TrackedFiles } from './commitFiles.ts';
import { resolveRevision, resolveTogether } from './git.ts';
import { openRepository } from './openRepository.ts';
import type { GitPlace, GitReason } from './process.ts';

/** A git repository as one call sees it: what was asked once is not asked again. */
export class Repository {
  readonly place: GitPlace;
  readonly #resolved = new Map<string, Outcome<string, GitReason>>();
  readonly #commits = new Map<string, CommitFiles>();
  readonly #contents = new BlobContents();

  constructor(place: GitPlace) {
    this.place = place;
  }

  /** The id of the commit that a revision names. */
  resolve(name: string): Outcome<string, GitReason> {
    const known = this.#resolved.get(name) ?? resolveRevision(this.place, name);
    this.#resolved.set(name, known);
    return known;
  }

  /** Asks for several at once, before each is asked for. */
  resolveTogether(names: readonly string[]): void {
    for (const [name, commit] of resolveTogether(this.place, names)) this.#resolved.set(name, done(commit));
  }

  commit(name: string): Outcome<CommitFiles, GitReason> {
    const known = this.#commits.get(name);
    if (known !== undefined) return done(known);
    const commit = this.resolve(name);
    if (!commit.ok) return commit;
    const opened = openCommit(this.place, { name, commit: commit.value }, this.#contents);
    if (opened.ok) this.#commits.set(name, opened.value);
    return opened;
  }

  staged(): Outcome<TrackedFiles, GitReason> {
    return openStaged(this.place, this.#contents);
  }

  /**
   * A path of the command line, from the top with `/`; `.` is the top, undefined lies outside. A folder that is gone
   * from disk is found by what is left above it.
   */
  pathOf(path: string, workingDirectory: string): string | undefined {
    const absolute = resolve(workingDirectory, path);
    const existing = nearestExisting(absolute);
    const real = join(realpathSync(existing), relative(existing, absolute));
    const found = pathInRoot(this.place.folder, real);
    return found === '..' || found.startsWith('../') ? undefined : found;
  }

  /** Where a path from the top is on disk, or would be. */
  onDisk = (path: string): string => join(this.place.folder, path);

  standsOnDisk = (path: string): boolean => existsSync(this.onDisk(path));

  /** The path under which a file of a commit is reported. */
  shownFrom(workingDirectory: string): (path: string) => string {
    const here = realpathSync(workingDirectory);
    return (path) => shownPath(this.onDisk(path), here);
  }

  /** The path behind the colon of `REV:path` as git reads it: from the top, or with `./` from the working directory. */
  pathInRevision = (path: string, workingDirectory: string): string =>
    resolve(/^\.\.?(?:\/|$)/.test(path) ? workingDirectory : this.place.folder, path);
}

/** The repository around a path of the call, which need not be there any more. */
export function repositoryAround(
  path: string,
  { workingDirectory, environment }: Pick<World, 'workingDirectory' | 'environment'>,
): Outcome<Repository, GitReason> {
  const opened = openRepository(folderAt(nearestExisting(resolve(workingDirectory, path))), environment);
  return opened.ok ? done(new Repository(opened.value)) : opened;
}

const nearestExisting = (path: string): string => (existsSync(path) ? path : nearestExisting(dirname(path)));
