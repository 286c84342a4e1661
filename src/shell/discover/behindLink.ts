import { readlinkSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { systemCode } from '../problem.ts';
import { discover } from './discover.ts';
import { pathInRoot } from './root.ts';

/** Where a link leads. It is never read through: this is for telling what was passed over. */
export interface BehindLink {
  /** As the link says it. */
  readonly says: string;
  /** Of what lies in the shop; undefined for all else. */
  readonly path: string | undefined;
  readonly isFolder: boolean;
  /** Names of documents stand directly in that folder. */
  readonly holdsDocuments: boolean;
}

export function behindLink(root: string, path: string): BehindLink {
  let says = '';
  try {
    says = readlinkSync(join(root, path));
    const real = realpathSync(join(root, path));
    const found = pathInRoot(realpathSync(root), real);
    const isFolder = statSync(real).isDirectory();
    return {
      says,
      path: found === '..' || found.startsWith('../') ? undefined : found,
      isFolder,
      holdsDocuments: isFolder && holdsDocuments(real, '.'),
    };
  } catch (error) {
    if (systemCode(error) === '') throw error;
    return { says, path: undefined, isFolder: false, holdsDocuments: false };
  }
}

export const holdsDocuments = (root: string, folder: string): boolean =>
  discover(root, [folder], { below: false }).paths.length > 0;
