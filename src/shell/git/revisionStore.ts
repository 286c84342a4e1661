import { folderOf, isAtOrAbove } from '../../documents/opened.ts';
import { sniffKind } from '../../documents/yaml/sniff.ts';
import { checkPathBelow } from '../discover/pathBelow.ts';
import type { Store } from '../discover/store.ts';
import type { CommitFiles } from './commitFiles.ts';

/** Where a shop lies in a commit, and how its files are named in a report. */
export interface ShopInCommit {
  readonly files: CommitFiles;
  /** From the top of the repository; `.` is the top. */
  readonly root: string;
  /** The path under which a file of the commit is reported. */
  readonly shown: (path: string) => string;
}

/** The documents of a commit below a folder of it. The working tree is never looked at. */
export function revisionStore({ files, root, shown }: ShopInCommit): Store {
  const inCommit = (path: string): string => (root === '.' ? path : path === '.' ? root : `${root}/${path}`);
  const byFolder = root === '.' ? files.byFolder : foldersBelow(files, root);
  const listIn = (folder: string): readonly string[] => [...(byFolder.get(folder) ?? [])].sort();
  let listed: ReadonlySet<string> = new Set();
  const within = (isWanted: (folder: string) => boolean): readonly string[] =>
    [...byFolder.keys()].filter(isWanted).flatMap(listIn);
  return {
    list: (folders) => {
      const paths = within((each) => folders.some((one) => isAtOrAbove(one, each))).toSorted();
      listed = new Set(paths);
      return paths;
    },
    listIn,
    read: (path) => {
      const allowed = checkPathBelow(path);
      if (!allowed.ok) return allowed;
      // What was listed together is read together.
      const together = (): readonly string[] =>
        listed.has(path) ? [...listed].map(inCommit) : files.around(inCommit(path));
      return files.read(inCommit(path), together);
    },
    ids: (folder) =>
      new Map(
        [...byFolder].flatMap(([each, paths]) =>
          isAtOrAbove(folder, each) ? paths.map((path) => [path, files.idOf(inCommit(path))] as const) : [],
        ),
      ),
    shown: (path) => shown(inCommit(path)),
    problems: () => [],
  };
}

/** By folder, relative to the root. */
function foldersBelow(files: CommitFiles, root: string): ReadonlyMap<string, readonly string[]> {
  const inRoot = (path: string): string => (path === root ? '.' : path.slice(root.length + 1));
  const folders = [...files.byFolder].filter(([folder]) => isAtOrAbove(root, folder));
  return new Map(folders.map(([folder, paths]) => [inRoot(folder), paths.map(inRoot)]));
}

/** The nearest folder at or above one of a commit that holds a shop document then; else the top. */
export function shopRootInCommit(files: CommitFiles, folder: string): string {
  for (let at = folder; ; at = folderOf(at)) {
    if ((files.byFolder.get(at) ?? []).some((path) => isShop(files, path))) return at;
    if (at === '.') return '.';
  }
}

function isShop(files: CommitFiles, path: string): boolean {
  if (!checkPathBelow(path.slice(path.lastIndexOf('/') + 1)).ok) return false;
  const bytes = files.read(path, () => files.around(path));
  return bytes.ok && sniffKind(bytes.value) === 'shop';
}
