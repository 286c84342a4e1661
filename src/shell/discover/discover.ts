import { type Dirent, readdirSync } from 'node:fs';
import { type Problem, systemWords } from '../problem.ts';
import { type Entry, entryKind, isDocumentName, isOpenFolder, mayLookLikeDocument } from './entry.ts';

export interface Discovery {
  /** The documents, relative to the root, with `/`, sorted, each once. */
  readonly paths: readonly string[];
  /** What may look like a document and is none of them. */
  readonly entries: readonly Entry[];
  /** Folders that could not be listed; the others are listed all the same. */
  readonly problems: readonly Problem<'unreadable'>[];
}

/**
 * The YAML files in and, unless `below` is false, below the given folders (relative to `root`, with `/`; '' or '.' is the root).
 * Names that begin with a dot, node_modules and links are passed over. Everything is reported by the listings of the folders.
 */
export function discover(
  root: string,
  folders: readonly string[],
  options: { readonly below: boolean } = { below: true },
): Discovery {
  const paths = new Set<string>();
  const entries = new Map<string, Entry>();
  const problems: Problem<'unreadable'>[] = [];
  const waiting = folders.map(withoutDot);
  const seen = new Set<string>();
  for (let folder = waiting.pop(); folder !== undefined; folder = waiting.pop()) {
    if (seen.has(folder)) continue;
    seen.add(folder);
    for (const found of list(root, folder, problems)) {
      const path = folder === '' ? found.name : `${folder}/${found.name}`;
      const kind = entryKind(found);
      if (options.below && kind === 'folder' && isOpenFolder(found.name)) waiting.push(path);
      if (kind === 'file' && isDocumentName(found.name)) paths.add(path);
      else if (mayLookLikeDocument(found.name, kind)) entries.set(path, { path, kind });
    }
  }
  return { paths: [...paths].sort(), entries: [...entries.values()].sort(byPath), problems };
}

/** A folder, absolute, and those below it in which documents may lie. */
export function openFolders(folder: string): readonly string[] {
  const below = list(folder, '', []).filter(
    (found) => entryKind(found) === 'folder' && isOpenFolder(found.name),
  );
  return [folder, ...below.flatMap(({ name }) => openFolders(`${folder}/${name}`))];
}

const byPath = (a: Entry, b: Entry): number => (a.path < b.path ? -1 : 1);

const withoutDot = (folder: string): string => (folder === '.' ? '' : folder);

function list(root: string, folder: string, problems: Problem<'unreadable'>[]): readonly Dirent[] {
  try {
    return readdirSync(`${root}/${folder}`, { withFileTypes: true });
  } catch (error) {
    const name = folder === '' ? root : folder;
    const message = `the folder ${name} cannot be listed: ${systemWords(error)}`;
    problems.push({ reason: 'unreadable', message, help: 'check the path and its permissions' });
    return [];
  }
}
