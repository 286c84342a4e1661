import { folderOf, isAtOrAbove } from '../documents/opened.ts';
import { sniffKind } from '../documents/yaml/sniff.ts';
import type { CommitFiles } from './commitFiles.ts';
import type { Store } from './store.ts';

/** Where a shop lies in a commit, and how its files are named in a report. */
export interface ShopInCommit {
  readonly files: CommitFiles;
  /** From the top of the repository; `.` is the top. */
  readonly root: string;
  /** The path under which a file of the commit is reported. */
  readonly shown: (path: string) => string;
}

/** More than most engines have documents. */
const FEW = 60;

/** The documents of a commit below a folder of it. The working tree is never looked at. */
export function revisionStore({ files, root, shown }: ShopInCommit): Store {
  const below = files.paths().filter((path) => isAtOrAbove(root, folderOf(path)));
  const inCommit = (path: string): string => (root === '.' ? path : path === '.' ? root : `${root}/${path}`);
  const inRoot = (path: string): string => (root === '.' ? path : path.slice(root.length + 1));
  const byFolder = new Map<string, string[]>();
  for (const path of below.map(inRoot)) {
    const folder = folderOf(path);
    const others = byFolder.get(folder);
    if (others === undefined) byFolder.set(folder, [path]);
    else others.push(path);
  }
  const listIn = (folder: string): readonly string[] => [...(byFolder.get(folder) ?? [])].sort();
  let listed: ReadonlySet<string> = new Set();
  const within = (isWanted: (folder: string) => boolean): readonly string[] =>
    [...byFolder.keys()].filter(isWanted).flatMap(listIn);
  /** What serves a file from the folders above, and the other files of its engine: those around it, where they are few. */
  const surroundings = (path: string): readonly string[] => {
    const folder = folderOf(path);
    const above = within((each) => isAtOrAbove(each, folder));
    const around = [folderOf(folder), folder]
      .filter((each) => each !== '.')
      .map((wide) => within((each) => isAtOrAbove(wide, each)))
      .find(({ length }) => length <= FEW);
    return [...above, ...(around ?? [])];
  };
  return {
    list: (folders) => {
      const paths = within((each) => folders.some((one) => isAtOrAbove(one, each))).toSorted();
      listed = new Set(paths);
      return paths;
    },
    listIn,
    read: (path) => {
      // What was listed together is read together.
      const together = (): readonly string[] => (listed.has(path) ? [...listed] : surroundings(path));
      return files.read(inCommit(path), () => together().map(inCommit));
    },
    ids: (folder) =>
      new Map(
        below
          .filter((path) => isAtOrAbove(inCommit(folder), folderOf(path)))
          .map((path) => [inRoot(path), files.idOf(path)]),
      ),
    shown: (path) => shown(inCommit(path)),
    problems: () => [],
  };
}

/** The nearest folder at or above one of a commit that holds a shop document then; else the top. */
export function shopRootInCommit(files: CommitFiles, folder: string): string {
  const store = revisionStore({ files, root: '.', shown: (path) => path });
  for (let at = folder; ; at = folderOf(at)) {
    if (store.listIn(at).some((path) => isShop(store, path))) return at;
    if (at === '.') return '.';
  }
}

function isShop(store: Store, path: string): boolean {
  const bytes = store.read(path);
  return bytes.ok && sniffKind(bytes.value) === 'shop';
}
