import type { Dirent } from 'node:fs';

export type EntryKind = 'file' | 'link' | 'folder' | 'pipe' | 'socket' | 'device' | 'repository';

/** What stands somewhere in a shop and is not read, though it may look like a document. */
export interface Entry {
  /** Relative to the root, with `/`. */
  readonly path: string;
  readonly kind: EntryKind;
}

export const nameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

/** Would the file at this path below the root be found? For paths that come from elsewhere, such as a commit. */
export function isDocumentPath(path: string): boolean {
  const parts = path.split('/');
  const name = parts.pop() ?? '';
  return isDocumentName(name) && parts.every(isOpenFolder);
}

// A dot file is no document: it may be the leaving of a file manager, or a file that is just being written.
export const isDocumentName = (name: string): boolean =>
  !name.startsWith('.') && (name.endsWith('.yaml') || name.endsWith('.yml'));

export const isOpenFolder = (name: string): boolean => !name.startsWith('.') && name !== 'node_modules';

/** In any case of letters, hidden or not. */
export const endsAsYaml = (name: string): boolean => /\.ya?ml$/i.test(name);

/** What editors and merges leave beside a file. */
export const isBackup = (name: string): boolean => /~$|^\.#|^#.*#$|\.(?:bak|orig|old|sw[a-z])$/i.test(name);

/** Where `record` keeps an entry until it is finished. */
export const isJournal = (name: string): boolean => /^\..+\.part$/.test(name);

/** Formats that hold no document, so that photos and programs need not be opened to be told apart from one. */
const OTHER_FORMATS =
  /\.(?:jpe?g|png|gif|webp|heic|tiff?|bmp|svg|pdf|mp[34]|mov|avi|mkv|wav|zip|t?gz|xz|bz2|7z|rar|tar|docx?|xlsx?|pptx?|od[pst]|csv|tsv|html?|css|[cm]?jsx?|[cm]?tsx?|json|py|rb|go|rs|java|kt|c|h|cc|cpp|hpp|sh|ps1|bat|exe|dll|so|o|a|class|wasm|lock|dxf|step|stp|stl)$/i;

/** By its name and kind alone, of something that is no document and no folder to be searched. */
export function mayLookLikeDocument(name: string, kind: EntryKind): boolean {
  if (kind === 'link') return true;
  if (kind === 'folder') return endsAsYaml(name) || (!isOpenFolder(name) && name !== '.git');
  if (endsAsYaml(name) || isJournal(name)) return true;
  return kind === 'file' && (isBackup(name) || !(name.startsWith('.') || OTHER_FORMATS.test(name)));
}

export function entryKind(entry: Dirent): EntryKind {
  if (entry.isFile()) return 'file';
  if (entry.isDirectory()) return 'folder';
  if (entry.isSymbolicLink()) return 'link';
  if (entry.isFIFO()) return 'pipe';
  return entry.isSocket() ? 'socket' : 'device';
}
