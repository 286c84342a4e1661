import { isAtOrAbove } from '../../documents/opened.ts';
import type { Found } from '../../shell/discover/loadEngines.ts';
import { changedDocuments, enginesTouched, type ShopStates } from '../../shell/git/changedDocuments.ts';
import type { CommitFiles } from '../../shell/git/commitFiles.ts';
import type { Repository } from '../../shell/git/repository.ts';
import { revisionStore } from '../../shell/git/revisionStore.ts';
import type { Shop } from '../shop/shopSource.ts';
import { UsageError } from '../usage.ts';

/** A revision of the repository that a shop lies in. */
export interface Since {
  readonly repository: Repository;
  readonly files: CommitFiles;
}

/** A shop and what lay in its folder at a commit, whether a shop document was there already or not. */
export function statesSince(shop: Shop, { repository, files }: Since): ShopStates {
  const root = repository.pathOf(shop.root, '.');
  const { folder } = repository.place;
  if (root === undefined) throw new UsageError(`${shop.root} is not in the repository ${folder}`);
  const before = revisionStore({ files, root, shown: (path) => path });
  return {
    before,
    after: shop.store,
    repository: { place: files.place, commit: files.revision.commit },
  };
}

/** What is left to check of the selected folders: engines that something changed for, and files of none that changed. */
export function changedIn(shop: Shop, folders: readonly string[], since: Since): Found {
  const states = statesSince(shop, since);
  const changed = changedDocuments(states, shop.loader);
  const isSelected = (path: string): boolean => folders.some((folder) => isAtOrAbove(folder, path));
  const engines = enginesTouched(changed, shop.loader, states).filter(
    (engine) => isSelected(engine) || folders.some((folder) => isAtOrAbove(engine, folder)),
  );
  const others = changed.present.filter(
    (path) => isSelected(path) && !engines.some((each) => isAtOrAbove(each, path)),
  );
  return { engines, others, unread: changed.unread.filter(({ entry }) => isSelected(entry.path)) };
}
