import { folderOf } from '../../documents/opened.ts';
import {
  type Entry,
  endsAsYaml,
  isDocumentName,
  isOpenFolder,
  mayLookLikeDocument,
  nameOf,
} from '../discover/entry.ts';
import type { TreeEntry } from './git.ts';

/** What is no document of a commit and may look like one, told as it would be found on disk. */
export interface PassedOver {
  readonly byFolder: ReadonlyMap<string, readonly Entry[]>;
  /** Of its files and links. */
  readonly blobs: ReadonlyMap<string, string>;
  readonly links: ReadonlySet<string>;
  /** Folders that are not searched, and that documents by their name stand in. */
  readonly closedFolders: ReadonlySet<string>;
}

/** @param isDocument of an entry that is read and not passed over */
export function passedOver(
  tree: readonly TreeEntry[],
  isDocument: (entry: TreeEntry) => boolean,
): PassedOver {
  const entries = new Map<string, Entry>();
  const blobs = new Map<string, string>();
  const closedFolders = new Set<string>();
  for (const entry of tree) {
    const { path, oid, kind } = entry;
    const folders = foldersOf(path);
    for (const each of folders.filter(endsAsYaml)) entries.set(each, { path: each, kind: 'folder' });
    if (isDocument(entry)) continue;
    const closed = folders.find((each) => !isOpenFolder(nameOf(each)));
    if (closed !== undefined) {
      if (closed !== folderOf(path) || !isDocumentName(nameOf(path))) continue;
      closedFolders.add(closed);
      entries.set(closed, { path: closed, kind: 'folder' });
    } else if (mayLookLikeDocument(nameOf(path), kind)) {
      entries.set(path, { path, kind });
      if (kind !== 'repository') blobs.set(path, oid);
    }
  }
  const links = new Set(tree.filter(({ kind }) => kind === 'link').map(({ path }) => path));
  return { byFolder: grouped([...entries.values()]), blobs, links, closedFolders };
}

/** Every folder that a path lies in, the highest first. */
const foldersOf = (path: string): readonly string[] =>
  [...path.matchAll(/\//g)].map(({ index }) => path.slice(0, index));

function grouped(entries: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> {
  const folders = new Map<string, Entry[]>();
  for (const entry of entries) {
    const folder = folderOf(entry.path);
    const others = folders.get(folder);
    if (others === undefined) folders.set(folder, [entry]);
    else others.push(entry);
  }
  return folders;
}
