import { measuredSession } from '../../checks/value/measured.ts';
import type { PastCommit, PastState } from '../../compare/past.ts';
import { OpenedOnce } from '../../shell/discover/openedOnce.ts';
import type { Revision } from '../../shell/git/commitFiles.ts';
import type { KnownCommit } from '../../shell/git/fileIds.ts';
import { type Commit, commitsTouching, isShallow } from '../../shell/git/git.ts';
import { type Repository, repositoryAround } from '../../shell/git/repository.ts';
import type { World } from '../../shell/world.ts';
import { engineTitle } from '../shop/enginesNamed.ts';
import type { EngineFolder } from '../shop/resolveShop.ts';
import { revisionSource } from '../shop/revisionSource.ts';
import type { ShopSource } from '../shop/shopSource.ts';
import { orUsage } from '../usage.ts';

export interface PastStates {
  /** The newest first. */
  readonly states: readonly PastState[];
  /** Commits in which the engine cannot be judged. */
  readonly notJudged: readonly PastCommit[];
  /** In a shallow clone: there is more that is not here. */
  readonly isCutShort: boolean;
}

/** What the commits that touched an engine held, up to a revision or HEAD. Throws a UsageError for what git refuses. */
export function pastStates(present: EngineFolder, revision: Revision | undefined, world: World): PastStates {
  const repository = orUsage(repositoryAround(present.shop.root, world));
  const path = repository.pathOf(`${present.shop.root}/${present.folder}`, world.workingDirectory) ?? '.';
  const head = revision?.commit ?? orUsage(repository.resolve('HEAD'));
  const seen = new SeenFiles({ place: repository.place, commit: head });
  seen.freshIn(present);
  const opened = new OpenedOnce();
  const sourceAt = (commit: string): ShopSource => revisionSource(commit, repository, world, opened);
  const found = statesAlong({ repository, root: present.shop.root, seen, sourceAt }, path, head);
  return {
    states: found.flatMap(({ held, state }) =>
      state === undefined || state === 'broken' ? [] : { held, ...state },
    ),
    notJudged: found.flatMap(({ held, state }) => (state === 'broken' ? [held] : [])),
    isCutShort: orUsage(isShallow(repository.place)),
  };
}

interface Walk {
  readonly repository: Repository;
  /** The folder of the shop, absolute. */
  readonly root: string;
  readonly seen: SeenFiles;
  readonly sourceAt: (commit: string) => ShopSource;
}

interface Held {
  readonly held: PastCommit;
  readonly state: ReturnType<typeof stateAt>;
}

/** The commits that touched its folder, and before it was moved those that touched where it lay then. */
function statesAlong(walk: Walk, path: string, head: string): readonly Held[] {
  const { repository, seen, sourceAt } = walk;
  const commits = orUsage(commitsTouching(repository.place, head, path === '.' ? [] : [path]));
  const found = commits.map((commit) => {
    const located = sourceAt(commit.oid).locate(repository.onDisk(path));
    return { held: heldBy(commit), state: located && stateAt(located, seen) };
  });
  const first = commits.at(-1);
  const before = first && beforeMove(walk, path, first.oid);
  return before === undefined ? found : [...found, ...statesAlong(walk, before.path, before.commit)];
}

/** The engine of the same name that lay in another folder when the commit was made that has it here, and lies there no more. */
function beforeMove(
  { repository, root, sourceAt }: Walk,
  path: string,
  first: string,
): { readonly path: string; readonly commit: string } | undefined {
  const parent = repository.resolve(`${first}~1`);
  const now = sourceAt(first);
  const moved = now.locate(repository.onDisk(path));
  if (!parent.ok || moved === undefined) return undefined;
  const title = engineTitle(moved.shop.store, moved.folder);
  const there = sourceAt(parent.value).locate(root);
  const [only, ...others] = (there?.shop.loader.find({ folders: [there.folder] }).engines ?? []).filter(
    (folder) => title !== '' && there !== undefined && engineTitle(there.shop.store, folder) === title,
  );
  if (there === undefined || only === undefined || others.length > 0) return undefined;
  const was = repository.pathOf(`${there.shop.root}/${only}`, root);
  const isStillThere = was === undefined || now.locate(repository.onDisk(was)) !== undefined;
  return isStillThere ? undefined : { path: was, commit: parent.value };
}

const heldBy = ({ oid, time }: Commit): PastCommit => ({
  commit: oid,
  date: new Date(time * 1000).toISOString().slice(0, 10),
});

/** Undefined where there was no engine yet, or nothing that a later state does not have. */
function stateAt(there: EngineFolder, seen: SeenFiles): Omit<PastState, 'held'> | 'broken' | undefined {
  const { shop, folder } = there;
  if (shop.loader.engineAround(folder) !== folder) return undefined;
  const fresh = seen.freshIn(there);
  if (fresh.size === 0) return undefined;
  const { engine, registry } = shop.load(folder);
  if (engine === undefined) return 'broken';
  const sessions = engine.sessions.filter(({ path }) => fresh.has(path));
  return {
    paths: new Set(engine.sessions.map(({ path }) => path)),
    sessions: sessions.map((session) => measuredSession(engine, registry, session)),
  };
}

/** Files by path and content: a session that a later state has as it is need not be judged again. */
class SeenFiles {
  readonly #keys = new Set<string>();
  readonly #repository: KnownCommit;

  constructor(repository: KnownCommit) {
    this.#repository = repository;
  }

  /** The files of an engine that were in none before, as they are reported. */
  freshIn({ shop: { store }, folder }: EngineFolder): ReadonlySet<string> {
    const files = [...store.ids(folder, this.#repository)].map(([path, id]) => ({
      shown: store.shown(path),
      key: `${store.shown(path)} ${id}`,
    }));
    const fresh = files.filter(({ key }) => !this.#keys.has(key));
    for (const { key } of fresh) this.#keys.add(key);
    return new Set(fresh.map(({ shown }) => shown));
  }
}
