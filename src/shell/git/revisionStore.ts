import { folderOf, isAtOrAbove } from '../../documents/opened.ts';
import { sniffKind } from '../../documents/yaml/sniff.ts';
import { type Entry, endsAsYaml, isDocumentPath, nameOf } from '../discover/entry.ts';
import { checkPathBelow } from '../discover/pathBelow.ts';
import type { Store } from '../discover/store.ts';
import { behindLinkInCommit } from './behindLinkInCommit.ts';
import type { TrackedFiles } from './commitFiles.ts';

/** Where a shop lies in a commit, and how its files are named in a report. */
export interface ShopInCommit {
  readonly files: TrackedFiles;
  /** From the top of the repository; `.` is the top. */
  readonly root: string;
  /** The path under which a file of the commit is reported. */
  readonly shown: (path: string) => string;
}

/** The documents of a commit below a folder of it. The working tree is never looked at. */
export function revisionStore({ files, root, shown }: ShopInCommit): Store {
  const inCommit = (path: string): string => (root === '.' ? path : path === '.' ? root : `${root}/${path}`);
  const inRoot = (path: string): string =>
    root === '.' ? path : path === root ? '.' : path.slice(root.length + 1);
  const byFolder = foldersBelow(files.byFolder, root, inRoot, inRoot);
  const entries = foldersBelow(
    files.entriesByFolder,
    root,
    ({ path, kind }) => ({ path: inRoot(path), kind }),
    inRoot,
  );
  let listed: ReadonlySet<string> = new Set();
  return {
    list: (folders) => {
      const paths = within(byFolder, folders).toSorted();
      listed = new Set([...paths, ...within(entries, folders).map(({ path }) => path)]);
      return paths;
    },
    listIn: (folder) => (byFolder.get(folder) ?? []).toSorted(),
    entries: (folders) => within(entries, folders).toSorted(byPath),
    entriesIn: (folder) => (entries.get(folder) ?? []).toSorted(byPath),
    behind: (link) => {
      const found = behindLinkInCommit(files, inCommit(link));
      const isHere = found.path !== undefined && isAtOrAbove(root, found.path);
      return { ...found, path: isHere ? inRoot(found.path) : undefined };
    },
    holdsDocuments: (folder) => files.holdsDocuments(inCommit(folder)),
    read: (path) => {
      const allowed = checkPathBelow(path);
      if (!allowed.ok) return allowed;
      // What was listed together is read together.
      const together = (): readonly string[] =>
        listed.has(path) ? [...listed].map(inCommit) : files.around(inCommit(path));
      return files.read(inCommit(path), together);
    },
    ids: (folder) =>
      new Map(within(byFolder, [folder]).map((path) => [path, files.idOf(inCommit(path))] as const)),
    shown: (path) => shown(inCommit(path)),
    problems: () => [],
  };
}

type ByFolder<Item> = ReadonlyMap<string, readonly Item[]>;

/** By folder, relative to the root. */
function foldersBelow<Item>(
  byFolder: ByFolder<Item>,
  root: string,
  inRoot: (item: Item) => Item,
  folderInRoot: (folder: string) => string,
): ByFolder<Item> {
  if (root === '.') return byFolder;
  const folders = [...byFolder].filter(([folder]) => isAtOrAbove(root, folder));
  return new Map(folders.map(([folder, items]) => [folderInRoot(folder), items.map(inRoot)]));
}

const within = <Item>(byFolder: ByFolder<Item>, folders: readonly string[]): readonly Item[] =>
  [...byFolder].flatMap(([each, items]) => (folders.some((one) => isAtOrAbove(one, each)) ? items : []));

const byPath = (a: Entry, b: Entry): number => (a.path < b.path ? -1 : 1);

/** The nearest folder at or above one of a commit that holds a shop document then; else the top. */
export function shopRootInCommit(files: TrackedFiles, folder: string): string {
  for (let at = folder; ; at = folderOf(at)) {
    if (files.inFolder(at).some((path) => isShop(files, path))) return at;
    if (at === '.') return '.';
  }
}

function isShop(files: TrackedFiles, path: string): boolean {
  const name = nameOf(path);
  if (!isDocumentPath(path) || files.isLink(path)) return endsAsYaml(name) && /^shop\./i.test(name);
  if (!checkPathBelow(name).ok) return false;
  const bytes = files.read(path, () => files.around(path));
  return bytes.ok && sniffKind(bytes.value) === 'shop';
}
