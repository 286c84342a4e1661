import { resolve } from 'node:path';
import { openDocument } from '../../documents/opened.ts';
import { MOST_BYTES } from '../../documents/yaml/bytes.ts';
import { sniffKind } from '../../documents/yaml/sniff.ts';
import { fileIds, type KnownCommit } from '../git/fileIds.ts';
import type { Outcome, Problem } from '../problem.ts';
import { type BehindLink, behindLink, holdsDocuments } from './behindLink.ts';
import { type Discovery, discover } from './discover.ts';
import type { Entry } from './entry.ts';
import { pathInRoot } from './root.ts';
import { readerBelow } from './safeRead.ts';

/** Where a shop's documents come from: the working tree, or a commit of it. Paths are relative to the root. */
export interface Store {
  /** The YAML files in and below folders, sorted. */
  readonly list: (folders: readonly string[]) => readonly string[];
  /** The YAML files directly in a folder, sorted. */
  readonly listIn: (folder: string) => readonly string[];
  /** What may look like a document and is none of these, in and below folders; and directly in a folder. */
  readonly entries: (folders: readonly string[]) => readonly Entry[];
  readonly entriesIn: (folder: string) => readonly Entry[];
  /** Where a link leads. */
  readonly behind: (link: string) => BehindLink;
  /** Names of documents stand directly in a folder that is not searched. */
  readonly holdsDocuments: (folder: string) => boolean;
  readonly read: (path: string) => Outcome<Uint8Array>;
  /** The id that git gives each file in and below a folder in this repository; undefined for one that cannot be read. */
  readonly ids: (folder: string, repository: KnownCommit) => ReadonlyMap<string, string | undefined>;
  /** The path under which a file is reported: relative to the working directory. */
  readonly shown: (path: string) => string;
  /** Folders that could not be listed. */
  readonly problems: () => readonly Problem[];
}

/** The documents as they stand on disk below an absolute folder. */
export function workTree(root: string, workingDirectory: string): Store {
  const problems: Problem[] = [];
  const listed = new Map<string, Discovery>();
  const below = (folders: readonly string[]): Discovery => {
    const key = folders.join('\0');
    const known = listed.get(key);
    if (known !== undefined) return known;
    const found = discover(root, folders);
    problems.push(...found.problems);
    listed.set(key, found);
    return found;
  };
  const listing = new Map<string, Discovery>();
  const directlyIn = (folder: string): Discovery => {
    const found = listing.get(folder) ?? discover(root, [folder], { below: false });
    listing.set(folder, found);
    return found;
  };
  const readAny = readerBelow(root);
  return {
    list: (folders) => below(folders).paths,
    listIn: (folder) => directlyIn(folder).paths,
    entries: (folders) => below(folders).entries,
    entriesIn: (folder) => directlyIn(folder).entries,
    behind: (link) => behindLink(root, link),
    holdsDocuments: (folder) => holdsDocuments(root, folder),
    read: (path) => readAny(path, MOST_BYTES),
    ids: (folder, repository) => {
      const idOf = fileIds(root, repository, (path) => readAny(path, MOST_BYTES));
      return new Map(below([folder]).paths.map((path) => [path, idOf(path)]));
    },
    shown: (path) => shownPath(resolve(root, path), workingDirectory),
    problems: () => problems,
  };
}

export const shownPath = (absolute: string, workingDirectory: string): string =>
  pathInRoot(workingDirectory, absolute);

/** What a document says it is; one whose first lines do not tell is parsed. */
export function kindIn(store: Store, path: string): string | undefined {
  const bytes = store.read(path);
  return bytes.ok ? (sniffKind(bytes.value) ?? openDocument(path, path, bytes.value).kind) : undefined;
}
