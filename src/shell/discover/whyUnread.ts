import { isOpenFolder } from './entry.ts';
import type { Store } from './store.ts';
import { saidBy, unreadOf } from './unread.ts';
import { type Reason, reasonOf } from './unreadReason.ts';

/** Why a folder of a shop, or a file that stands in it, is not read; undefined where it is. */
export function whyUnread(
  folder: string,
  path: string | undefined,
  /** The folder of the engine around it. */
  engine: string | undefined,
  store: Store,
): Reason | undefined {
  const closed = engine === undefined ? undefined : closedBetween(engine, folder);
  if (closed !== undefined)
    return {
      why: `it lies in ${closed}, and folders of that name are not searched`,
      help: 'move it out of there',
    };
  if (path === undefined || store.listIn(folder).includes(path)) return undefined;
  const entry = store.entriesIn(folder).find((each) => each.path === path);
  const isLikeOne = entry !== undefined && unreadOf(entry, saidBy(entry, store), store, true) !== undefined;
  return isLikeOne ? reasonOf(entry, store) : NO_YAML;
}

const NO_YAML = { why: 'its name does not end in .yaml', help: 'name a document' };

const closedBetween = (engine: string, folder: string): string | undefined =>
  (engine === '.' ? folder : folder.slice(engine.length + 1))
    .split('/')
    .find((part) => part !== '' && part !== '.' && !isOpenFolder(part));
