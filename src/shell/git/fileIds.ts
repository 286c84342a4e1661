import { lstatSync, realpathSync } from 'node:fs';
import { pathInRoot } from '../discover/root.ts';
import type { Outcome } from '../problem.ts';
import { looksAsNoted, type NotedFile, notedFiles } from './index.ts';
import { blobIds } from './objectId.ts';
import type { GitPlace } from './process.ts';

/** A repository, and a commit of it: the length of its id says how ids are made there. */
export interface KnownCommit {
  readonly place: GitPlace;
  readonly commit: string;
}

/**
 * The ids that git gives the files below a folder of a working tree. A file that git has seen as it is has the id that git
 * noted; any other is read. Undefined for one that cannot be read.
 */
export function fileIds(
  root: string,
  { place, commit }: KnownCommit,
  read: (path: string) => Outcome<Uint8Array>,
): (path: string) => string | undefined {
  const noted = notedFiles(place, commit.length / 2);
  const realRoot = realpathSync(root);
  const above = pathInRoot(place.folder, realRoot);
  const idOf = blobIds(commit);
  return (path) => {
    const note = noted.get(above === '.' ? path : `${above}/${path}`);
    if (note !== undefined && stands(`${realRoot}/${path}`, note)) return note.oid;
    const bytes = read(path);
    return bytes.ok ? idOf(bytes.value) : undefined;
  };
}

function stands(path: string, note: NotedFile): boolean {
  const file = lstatSync(path, { throwIfNoEntry: false });
  return file !== undefined && looksAsNoted(file, note);
}
