import { type Dirent, readdirSync } from 'node:fs';
import { type Problem, systemWords } from '../problem.ts';

export interface Discovery {
  /** Relative to the root, with `/`, sorted, each once. */
  readonly paths: readonly string[];
  /** Folders that could not be listed; the others are listed all the same. */
  readonly problems: readonly Problem<'unreadable'>[];
}

/**
 * The YAML files in and, unless `below` is false, below the given folders (relative to `root`, with `/`; '' or '.' is the root).
 * Names that begin with a dot, node_modules and links are skipped.
 */
export function discover(
  root: string,
  folders: readonly string[],
  options: { readonly below: boolean } = { below: true },
): Discovery {
  const paths = new Set<string>();
  const problems: Problem<'unreadable'>[] = [];
  const waiting = folders.map(withoutDot);
  const seen = new Set<string>();
  for (let folder = waiting.pop(); folder !== undefined; folder = waiting.pop()) {
    if (seen.has(folder)) continue;
    seen.add(folder);
    for (const entry of list(root, folder, problems)) {
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (options.below && entry.isDirectory() && isOpenFolder(entry.name)) waiting.push(path);
      else if (entry.isFile() && isDocumentName(entry.name)) paths.add(path);
    }
  }
  return { paths: [...paths].sort(), problems };
}

/** Would the file at this path below the root be found? For paths that come from elsewhere, such as a commit. */
export function isDocumentPath(path: string): boolean {
  const parts = path.split('/');
  const name = parts.pop() ?? '';
  return isDocumentName(name) && parts.every(isOpenFolder);
}

// A dot file is no document: it may be the leaving of a file manager, or a file that is just being written.
const isDocumentName = (name: string): boolean =>
  !name.startsWith('.') && (name.endsWith('.yaml') || name.endsWith('.yml'));

const isOpenFolder = (name: string): boolean => !name.startsWith('.') && name !== 'node_modules';

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
