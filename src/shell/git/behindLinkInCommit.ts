import { posix } from 'node:path';
import { folderOf } from '../../documents/opened.ts';
import type { BehindLink } from '../discover/behindLink.ts';
import type { TrackedFiles } from './commitFiles.ts';

/** Longer chains are circles. */
const LONGEST_CHAIN = 40;

/** Where a link of a commit leads; what lies outside of it is not known, not even whether it is a folder. */
export function behindLinkInCommit(files: TrackedFiles, link: string): BehindLink {
  const says = targetOf(files, link);
  let path: string | undefined = link;
  for (let steps = 0; path !== undefined && files.isLink(path); steps++) {
    path = steps < LONGEST_CHAIN ? landing(path, targetOf(files, path)) : undefined;
  }
  const isFolder = path !== undefined && files.hasFolder(path);
  const isThere = path !== undefined && (isFolder || files.blobOf(path) !== undefined);
  return {
    says,
    path: isThere ? path : undefined,
    isFolder,
    holdsDocuments: isFolder && path !== undefined && (files.byFolder.get(path) ?? []).length > 0,
  };
}

function targetOf(files: TrackedFiles, link: string): string {
  const bytes = files.read(link, () => files.around(link));
  return bytes.ok ? Buffer.from(bytes.value).toString('utf8') : '';
}

/** Undefined where it leads out of the repository. */
function landing(link: string, says: string): string | undefined {
  const found = posix.normalize(posix.join(folderOf(link), says)).replace(/(?<=.)\/$/, '');
  return posix.isAbsolute(says) || found === '..' || found.startsWith('../') ? undefined : found;
}
