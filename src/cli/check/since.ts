import type { Finding } from '../../checks/finding.ts';
import { folderOf, isAtOrAbove } from '../../documents/opened.ts';
import type { Found } from '../../shell/discover/loadEngines.ts';
import { changedDocuments, enginesTouched, type ShopStates } from '../../shell/git/changedDocuments.ts';
import type { CommitFiles } from '../../shell/git/commitFiles.ts';
import type { Repository } from '../../shell/git/repository.ts';
import { revisionStore } from '../../shell/git/revisionStore.ts';
import type { ShopPaths } from '../shop/resolveShop.ts';
import { type Shop, shopOf } from '../shop/shopSource.ts';
import { UsageError } from '../usage.ts';
import { leftWithout, withoutEngine } from './leftWithout.ts';

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

/** What is left to check, and what deleted documents leave without what it stands on. */
export interface Changed {
  readonly found: Found;
  readonly findings: readonly Finding[];
}

/** All of the selected folders, or since a revision what changed of it. */
export function foundIn({ shop, selected }: ShopPaths, since: Since | undefined): Changed {
  const folders = selected.map(({ folder }) => folder);
  return since === undefined
    ? { found: shop.loader.find({ folders }), findings: [] }
    : changedIn(shop, folders, since);
}

/** Of the selected folders engines that something changed for, and files of none that changed or lost their engine. */
function changedIn(shop: Shop, folders: readonly string[], since: Since): Changed {
  const states = statesSince(shop, since);
  const changed = changedDocuments(states, shop.loader);
  const isSelected = (path: string): boolean => folders.some((folder) => isAtOrAbove(folder, path));
  const engines = enginesTouched(changed, shop.loader, states).filter(
    (engine) => isSelected(engine) || folders.some((folder) => isAtOrAbove(engine, folder)),
  );
  const gone = changed.gone.filter(
    (path) => isSelected(path) || folders.some((folder) => isAtOrAbove(folderOf(path), folder)),
  );
  const deletion = { before: shopOf(states.before, shop.root), after: shop };
  const others = new Set([...changed.present, ...withoutEngine(gone, deletion)].filter(isSelected));
  return {
    found: {
      engines,
      others: [...others].filter((path) => !engines.some((each) => isAtOrAbove(each, path))),
      unread: changed.unread.filter(({ entry }) => isSelected(entry.path)),
    },
    findings: leftWithout(gone, deletion),
  };
}
