import { folderOf, isAtOrAbove } from '../../documents/opened.ts';
import { MOST_BYTES } from '../../documents/yaml/bytes.ts';
import { isDocumentPath } from '../discover/entry.ts';
import { done, failed, type Outcome } from '../problem.ts';
import { type Blob, readBlobs } from './blobs.ts';
import { listStaged, listTree, type TreeEntry } from './git.ts';
import { type PassedOver, passedOver } from './passedOver.ts';
import type { GitPlace, GitReason } from './process.ts';

/** A revision as it was asked for, and the commit that it names. */
export interface Revision {
  readonly name: string;
  readonly commit: string;
}

/** The documents that git holds of one commit, or of what is staged. Paths are from the top of the repository, with `/`. */
export class TrackedFiles {
  readonly place: GitPlace;
  /** The documents directly in each folder that has any. */
  readonly byFolder: ReadonlyMap<string, readonly string[]>;
  readonly #ids: ReadonlyMap<string, string>;
  readonly #passedOver: PassedOver;
  readonly #contents: BlobContents;

  constructor(place: GitPlace, entries: readonly TreeEntry[], contents: BlobContents) {
    this.place = place;
    const isDocument = ({ path, kind }: TreeEntry): boolean => kind === 'file' && isDocumentPath(path);
    this.#ids = new Map(entries.filter(isDocument).map(({ path, oid }) => [path, oid]));
    this.#passedOver = passedOver(entries, isDocument);
    this.byFolder = groupedByFolder(this.#ids.keys());
    this.#contents = contents;
  }

  has(path: string): boolean {
    return this.#ids.has(path);
  }

  hasFolder(folder: string): boolean {
    return folder === '.' || [...this.byFolder.keys()].some((each) => isAtOrAbove(folder, each));
  }

  /** What may look like a document, by the folder it stands in. */
  get entriesByFolder(): PassedOver['byFolder'] {
    return this.#passedOver.byFolder;
  }

  /** Names of documents stand directly in a folder that is not searched. */
  holdsDocuments = (folder: string): boolean => this.#passedOver.closedFolders.has(folder);

  isLink = (path: string): boolean => this.#passedOver.links.has(path);

  /** The blob of any file or link that is looked at. */
  blobOf(path: string): string | undefined {
    return this.#ids.get(path) ?? this.#passedOver.blobs.get(path);
  }

  /** The blob's id, by which two commits are compared without reading either. */
  idOf(path: string): string | undefined {
    return this.#ids.get(path);
  }

  /** What serves a file from the folders above, and the other files of its engine: those around it, where they are few. */
  around(path: string): readonly string[] {
    const folder = folderOf(path);
    const folders = [...new Set([...this.byFolder.keys(), ...this.entriesByFolder.keys()])];
    const within = (isWanted: (folder: string) => boolean): readonly string[] =>
      folders.filter(isWanted).flatMap((each) => this.inFolder(each));
    const around = [folderOf(folder), folder]
      .filter((each) => each !== '.')
      .map((wide) => within((each) => isAtOrAbove(wide, each)))
      .find(({ length }) => length <= FEW);
    return [...within((each) => isAtOrAbove(each, folder)), ...(around ?? [])];
  }

  /** All that is looked at directly in a folder. */
  inFolder(folder: string): readonly string[] {
    const entries = this.entriesByFolder.get(folder) ?? [];
    return [...(this.byFolder.get(folder) ?? []), ...entries.map(({ path }) => path)];
  }

  /** Before a comparison: what is not the same in the other commit is read, with all around it, as soon as anything is. */
  expectComparison(other: TrackedFiles): void {
    const gone = [...this.#ids.keys()].filter((path) => !other.has(path));
    const changed = [...other.#ids].filter(([path, oid]) => this.idOf(path) !== oid);
    if (gone.length + changed.length > FEW) return;
    const around = [...gone.map((path) => this.around(path)), ...changed.map(([path]) => other.around(path))];
    this.#contents.expect(around.flat());
  }

  /** The bytes of a document. The first that is asked for of `together` brings all of them, in one process. */
  read(path: string, together: () => readonly string[]): Outcome<Uint8Array> {
    const oid = this.blobOf(path);
    if (oid === undefined)
      return failed('missing', `there is no file ${path} in that commit`, 'check the path');
    const blob = this.#contents.read(oid, () => [path, ...together()], this.place);
    return blob.ok ? bytesOf(blob.value, path) : blob;
  }
}

/** The documents of one commit. */
export class CommitFiles extends TrackedFiles {
  readonly revision: Revision;

  constructor(place: GitPlace, revision: Revision, entries: readonly TreeEntry[], contents: BlobContents) {
    super(place, entries, contents);
    this.revision = revision;
  }
}

/** More than most engines have documents. */
const FEW = 60;

function groupedByFolder(paths: Iterable<string>): ReadonlyMap<string, readonly string[]> {
  const folders = new Map<string, string[]>();
  for (const path of paths) {
    const folder = folderOf(path);
    const others = folders.get(folder);
    if (others === undefined) folders.set(folder, [path]);
    else others.push(path);
  }
  return folders;
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

/** What was opened of one repository in a run, by blob id. */
export class BlobContents {
  readonly #opened: TrackedFiles[] = [];
  readonly #known = new Map<string, Blob>();
  #expected: readonly string[] = [];

  /** Files that are read whenever those of the same path in another commit are. */
  add(files: TrackedFiles): void {
    this.#opened.push(files);
  }

  /** Files that are read with the next one that has to be. */
  expect(paths: readonly string[]): void {
    this.#expected = paths;
  }

  get size(): number {
    return this.#known.size;
  }

  read(oid: string, together: () => readonly string[], place: GitPlace): Outcome<Blob, GitReason> {
    const known = this.#known.get(oid);
    if (known !== undefined) return done(known);
    const paths = [...together(), ...this.#expected];
    this.#expected = [];
    const wanted = paths.flatMap((path) => this.#opened.flatMap((each) => each.blobOf(path) ?? []));
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

/** Lists a revision: links, dot folders and other files are passed over, as they are on disk. */
export function openCommit(
  place: GitPlace,
  revision: Revision,
  contents: BlobContents,
): Outcome<CommitFiles, GitReason> {
  const entries = listTree(place, revision.commit);
  if (!entries.ok) return entries;
  const commit = new CommitFiles(place, revision, entries.value, contents);
  contents.add(commit);
  return done(commit);
}

/** Lists what is staged in git's index. */
export function openStaged(place: GitPlace, contents: BlobContents): Outcome<TrackedFiles, GitReason> {
  const entries = listStaged(place);
  if (!entries.ok) return entries;
  const staged = new TrackedFiles(place, entries.value, contents);
  contents.add(staged);
  return done(staged);
}
