import { MOST_BYTES } from '../documents/yaml/bytes.ts';
import { isDocumentPath } from './discover.ts';
import { listTree, type TreeEntry } from './git.ts';
import { type Blob, readBlobs } from './gitBlobs.ts';
import type { GitPlace, GitReason } from './gitProcess.ts';
import { done, failed, type Outcome } from './problem.ts';

/** A revision as it was asked for, and the commit that it names. */
export interface Revision {
  readonly name: string;
  readonly commit: string;
}

/** The documents of one commit. Paths are from the top of the repository, with `/`. */
export class CommitFiles {
  readonly revision: Revision;
  readonly place: GitPlace;
  readonly #entries: ReadonlyMap<string, TreeEntry>;
  readonly #contents: BlobContents;

  constructor(place: GitPlace, revision: Revision, entries: readonly TreeEntry[], contents: BlobContents) {
    this.place = place;
    this.revision = revision;
    this.#entries = new Map(entries.map((entry) => [entry.path, entry]));
    this.#contents = contents;
  }

  /** Sorted as git sorts them. */
  paths(): readonly string[] {
    return [...this.#entries.keys()];
  }

  has(path: string): boolean {
    return this.#entries.has(path);
  }

  /** The blob's id, by which two commits are compared without reading either. */
  idOf(path: string): string | undefined {
    return this.#entries.get(path)?.oid;
  }

  /** The bytes of a document. The first that is asked for of `together` brings all of them, in one process. */
  read(path: string, together: () => readonly string[]): Outcome<Uint8Array> {
    const entry = this.#entries.get(path);
    if (entry === undefined)
      return failed('missing', `there is no file ${path} in that commit`, 'check the path');
    const blob = this.#contents.read(entry.oid, () => [path, ...together()], this.place);
    return blob.ok ? bytesOf(blob.value, path) : blob;
  }
}

function bytesOf(blob: Blob, path: string): Outcome<Uint8Array> {
  if (blob === 'too big') {
    const message = `${path} is larger than ${MOST_BYTES} bytes`;
    return failed('too-big', message, 'split it into smaller documents');
  }
  if (blob === 'absent') {
    const message = `${path} is in that commit, but its content is not in this clone`;
    return failed('absent', message, 'fetch it with git: nothing is fetched here');
  }
  return done(blob);
}

/** What the commits of one repository hold that were opened in a run, by blob id. */
export class BlobContents {
  readonly #commits: CommitFiles[] = [];
  readonly #known = new Map<string, Blob>();

  /** A commit whose files are read whenever those of the same path in another one are. */
  add(commit: CommitFiles): void {
    this.#commits.push(commit);
  }

  get size(): number {
    return this.#known.size;
  }

  read(oid: string, together: () => readonly string[], place: GitPlace): Outcome<Blob, GitReason> {
    const known = this.#known.get(oid);
    if (known !== undefined) return done(known);
    const wanted = together().flatMap((path) => this.#commits.flatMap((each) => each.idOf(path) ?? []));
    const read = readBlobs(
      place,
      wanted.filter((each) => !this.#known.has(each)),
      MOST_BYTES,
    );
    if (!read.ok) return read;
    for (const [each, blob] of read.value) this.#known.set(each, blob);
    return done(this.#known.get(oid) ?? 'absent');
  }
}

/** Lists the documents of a revision: links, dot folders and other files are left out, as they are on disk. */
export function openCommit(
  place: GitPlace,
  revision: Revision,
  contents: BlobContents,
): Outcome<CommitFiles, GitReason> {
  const entries = listTree(place, revision.commit);
  if (!entries.ok) return entries;
  const documents = entries.value.filter(({ path }) => isDocumentPath(path));
  const commit = new CommitFiles(place, revision, documents, contents);
  contents.add(commit);
  return done(commit);
}
