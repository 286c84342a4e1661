import { folderOf, isAtOrAbove } from '../../documents/opened.ts';
import type { ShopLoader } from '../discover/loadEngines.ts';
import { kindIn, type Store } from '../discover/store.ts';
import { saidBy, unreadOf } from '../discover/unread.ts';
import type { UnreadFile } from '../discover/unreadFiles.ts';
import type { KnownCommit } from './fileIds.ts';

/** Two states of one shop: the later is looked at, the earlier is a commit. */
export interface ShopStates {
  readonly before: Store;
  readonly after: Store;
  readonly repository: KnownCommit;
}

/** What is not the same in both. Ids and names are compared, nothing is parsed. */
export interface ChangedDocuments {
  /** Documents that were added, edited or are gone. */
  readonly all: readonly string[];
  /** Those that are there in the later state. */
  readonly present: readonly string[];
  /** Those that are not. */
  readonly gone: readonly string[];
  /** What is not read in the later state, and was not there in the earlier. */
  readonly unread: readonly UnreadFile[];
  /** Where a document that verdicts stand on was not read, in one of them alone. */
  readonly unreadDocuments: readonly string[];
}

export function changedDocuments(states: ShopStates, loader: ShopLoader): ChangedDocuments {
  const { before, after, repository } = states;
  const [was, is] = [before.ids('.', repository), after.ids('.', repository)];
  const present = [...is].flatMap(([path, id]) => (was.get(path) === id && was.has(path) ? [] : [path]));
  const gone = [...was.keys()].filter((path) => !is.has(path));
  const [wasPassed, isPassed] = [before, after].map(
    (store) => new Set(store.entries(['.']).map(({ path }) => path)),
  );
  const unread = loader.unread(['.'], ({ path }) => wasPassed?.has(path) === false);
  const unreadGone = before
    .entries(['.'])
    .filter((each) => isPassed?.has(each.path) === false)
    .filter((each) => unreadOf(each, saidBy(each, before), before, true)?.weight === 'document');
  const fresh = unread.filter(({ weight }) => weight === 'document').map(({ entry }) => entry);
  return {
    ...{ present, gone, unread, all: [...present, ...gone] },
    unreadDocuments: [...fresh, ...unreadGone].map(({ path }) => path),
  };
}

/** The engines of a shop that have a changed document among those that serve them. */
export function enginesTouched(
  { all, unread, unreadDocuments }: ChangedDocuments,
  loader: ShopLoader,
  { before, after }: ShopStates,
): readonly string[] {
  const changed = [...new Set([...all, ...unread.map(({ entry }) => entry.path), ...unreadDocuments])];
  const own = new Map(changed.map((path) => [path, loader.engineAround(folderOf(path))]));
  // A file that says no kind serves no engine, wherever it lies.
  const shared = changed.filter(
    (path) =>
      own.get(path) === undefined &&
      (unreadDocuments.includes(path) || [before, after].some((store) => kindIn(store, path) !== undefined)),
  );
  const studies = changed.filter((path) => mayHoldStudy(after, path));
  const touched = [...own.values()].flatMap((folder) => folder ?? []);
  if (shared.length === 0 && studies.length === 0) return [...new Set(touched)].sort();
  const others = loader.find({ folders: ['.'] }).engines.filter((each) => !touched.includes(each));
  const served = others.filter(
    (engine) =>
      shared.some((path) => isAtOrAbove(folderOf(path), engine)) ||
      loader.extendedBy(engine).some((path) => shared.includes(path)) ||
      (studies.length > 0 && loader.studiesFor(engine).some((path) => studies.includes(path))),
  );
  return [...new Set([...touched, ...served])].sort();
}

/** A study lies in an engine's folder, and a register above others may name it; one that is gone as well. */
function mayHoldStudy(store: Store, path: string): boolean {
  const bytes = store.read(path);
  return !bytes.ok || Buffer.from(bytes.value).includes('study:');
}
