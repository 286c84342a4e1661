import { folderOf } from '../../documents/opened.ts';
import type { OpenedOnce } from '../../shell/discover/openedOnce.ts';
import type { Revision, TrackedFiles } from '../../shell/git/commitFiles.ts';
import type { Repository } from '../../shell/git/repository.ts';
import { revisionStore, shopRootInCommit } from '../../shell/git/revisionStore.ts';
import type { World } from '../../shell/world.ts';
import { orUsage } from '../usage.ts';
import { type Shop, type ShopSource, shopOf } from './shopSource.ts';

/** The documents of one revision of a repository. Throws a UsageError for what git refuses. */
export function revisionSource(
  name: string,
  repository: Repository,
  world: World,
  opened = world.opened,
): ShopSource {
  const files = orUsage(repository.commit(name));
  return sourceOfFiles(files, files.revision, { repository, world, opened });
}

/** The documents that are staged for the next commit. */
export const stagedSource = (repository: Repository, world: World): ShopSource =>
  sourceOfFiles(orUsage(repository.staged()), undefined, { repository, world, opened: world.opened });

interface Around {
  readonly repository: Repository;
  readonly world: World;
  readonly opened: OpenedOnce | undefined;
}

function sourceOfFiles(
  files: TrackedFiles,
  revision: Revision | undefined,
  { repository, world, opened }: Around,
): ShopSource {
  const shown = repository.shownFrom(world.workingDirectory);
  const shops = new Map<string, Shop>();
  const open = (root: string): Shop => {
    const known = shops.get(root);
    if (known !== undefined) return known;
    const shop = shopOf(revisionStore({ files, root, shown }), repository.onDisk(root), opened);
    shops.set(root, shop);
    return shop;
  };
  return {
    revision,
    locate: (word) => {
      const found = repository.pathOf(word, world.workingDirectory);
      const path = found === undefined ? undefined : folderOrFile(found, files, repository);
      if (path === undefined) return undefined;
      const isFile = files.blobOf(path) !== undefined;
      const folder = isFile ? folderOf(path) : path;
      const root = shopRootInCommit(files, folder);
      const inRoot = (each: string): string => (root === '.' ? each : each.slice(root.length + 1) || '.');
      return { shop: open(root), folder: inRoot(folder), file: isFile ? inRoot(path) : undefined };
    },
  };
}

function folderOrFile(path: string, files: TrackedFiles, repository: Repository): string | undefined {
  if (files.blobOf(path) !== undefined || files.hasFolder(path)) return path;
  // Within a bare repository the folders on disk are git's own: the shop begins at the top.
  return files.place.bare && repository.standsOnDisk(path) ? '.' : undefined;
}
