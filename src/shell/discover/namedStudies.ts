import type { EngineDocuments } from '../../documents/assemble.ts';
import { type NamedStudy, studiesNamed } from '../../documents/engine/registerStudies.ts';
import { folderOf, type OpenedDocument } from '../../documents/opened.ts';
import { foldersAbove, pathFrom } from './pathBelow.ts';

/** What a loader can be asked about its shop. Paths are relative to the root. */
export interface ShopShelf {
  readonly open: (path: string) => OpenedDocument;
  readonly listIn: (folder: string) => readonly string[];
  /** What a file says it is, without opening it. */
  readonly kindOf: (path: string) => string | undefined;
  /** The engine whose folder holds this one. */
  readonly engineAround: (folder: string) => string | undefined;
}

/** The studies that registers name. Few name any: nothing more is read for the others. */
export function namedStudies(
  documents: readonly OpenedDocument[],
  shelf: ShopShelf,
): EngineDocuments['studies'] {
  const studies = new Map<string, ReadonlyMap<string, NamedStudy>>();
  for (const register of documents) {
    const named = register.kind === 'instruments' ? studiesNamed(register.root) : [];
    if (named.length === 0) continue;
    const found = named.map((path) => [path, studyAt(pathFrom(register.path, path), shelf)] as const);
    studies.set(register.source.path, new Map(found));
  }
  return studies;
}

function studyAt(path: string, shelf: ShopShelf): NamedStudy {
  const document = shelf.open(path);
  // What cannot be read may lie outside the shop, where nothing is looked for.
  if (document.root === undefined) return { document, around: [] };
  const folder = folderOf(path);
  const engine = shelf.engineAround(folder);
  const ofKind = (kind: string, folders: readonly string[]): readonly string[] =>
    folders.flatMap(shelf.listIn).filter((each) => shelf.kindOf(each) === kind);
  const engines = ofKind('engine', engine === undefined ? [] : [engine]);
  const shops = ofKind('shop', [folder, ...foldersAbove(folder)]);
  return { document, around: [...engines, ...shops].map(shelf.open) };
}

/** The paths of the studies that the registers in these folders name. */
export const studyPathsIn = (folders: readonly string[], shelf: ShopShelf): readonly string[] =>
  folders
    .flatMap(shelf.listIn)
    .filter((path) => shelf.kindOf(path) === 'instruments')
    .map(shelf.open)
    .flatMap(({ path, root }) => studiesNamed(root).map((each) => pathFrom(path, each)));
