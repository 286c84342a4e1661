import { type ComparedState, diffStates, type EngineDiff, type NotCompared } from '../../compare/diff.ts';
import { emptyState, type Judgeable, stateOfEngine, stateOfSession } from '../../compare/state.ts';
import { isAtOrAbove } from '../../documents/opened.ts';
import type { Sides } from '../../output/diff/comparison.ts';
import type { OpenedOnce } from '../../shell/discover/openedOnce.ts';
import { changedDocuments, enginesTouched } from '../../shell/git/changedDocuments.ts';
import type { CommitFiles } from '../../shell/git/commitFiles.ts';
import type { Repository } from '../../shell/git/repository.ts';
import type { World } from '../../shell/world.ts';
import { statesSince } from '../check/since.ts';
import {
  engineNamed,
  findEngine,
  type ReadEngine,
  readEngine,
  requireWorkTree,
} from '../shop/resolveShop.ts';
import { revisionSource } from '../shop/revisionSource.ts';
import type { Revisions } from '../shop/revisions.ts';
import type { Located, ShopSource } from '../shop/shopSource.ts';
import { orUsage, UsageError } from '../usage.ts';
import type { Compared } from './compared.ts';
import type { DiffCall } from './diffCall.ts';
import { namedAlike, type Pair, type Place, withMoved } from './movedEngines.ts';

/** One side of a comparison: a commit or the working tree, and the path in it that is meant. */
interface Ground {
  readonly side: ComparedState;
  readonly source: ShopSource;
  readonly path: string | undefined;
  /** Undefined for the working tree. */
  readonly files: CommitFiles | undefined;
}

interface Sources {
  /** The working tree. */
  readonly source: ShopSource;
  readonly revisions: Revisions;
  readonly opened: OpenedOnce;
}

/** Two commits, or a commit and the working tree: one engine, or all that something changed for. */
export function compareRevisions(
  call: DiffCall,
  sources: Sources,
  { all }: { readonly all: boolean },
  world: World,
): Compared {
  const [first, second] = [groundOf(call.a, sources, world), groundOf(call.b, sources, world)];
  const { repository } = sources.revisions;
  const named = call.engine === undefined ? undefined : pathOfEngine(call.engine, [second, first], world);
  // What one side names holds for the other as well: an engine that was moved is named on both.
  const a = { ...first, path: first.path ?? named ?? second.path };
  const b = { ...second, path: second.path ?? named ?? first.path };
  const areChangesAlone = a.path === undefined && !all;
  if (areChangesAlone && b.files !== undefined) a.files?.expectComparison(b.files);
  const pairs = areChangesAlone ? changedPairs(a, b, repository) : pairsAt(a, b, repository);
  const reported = new Set<string>();
  const sides = { a: a.side, b: b.side };
  const compared = pairs.map((pair) => comparePair(pair, sides, world, reported));
  return {
    sides,
    engines: compared.flatMap(({ diff }) => diff ?? []),
    notCompared: compared.flatMap(({ refused }) => refused ?? []),
    hasProblems: compared.some(({ hasProblems }) => hasProblems),
  };
}

function groundOf(word: string | undefined, { source, revisions, opened }: Sources, world: World): Ground {
  if (word === undefined) {
    requireWorkTree(revisions.repository, 'name two commits');
    return {
      side: { kind: 'worktree', name: 'working tree', commit: null },
      source,
      path: undefined,
      files: undefined,
    };
  }
  const { revision, path } = revisions.get(word);
  const at = revisionSource(revision, revisions.repository, world, opened);
  const files = orUsage(revisions.repository.commit(revision));
  return { side: { kind: 'revision', name: word, commit: files.revision.commit }, source: at, path, files };
}

/** Where the engine of that name lies, on the side that has it. */
function pathOfEngine(name: string, grounds: readonly Ground[], world: World): string {
  const here = grounds.find(({ source }) => findEngine(name, source) !== undefined) ?? grounds[0];
  const { shop, folder } = engineNamed(name, world, here?.source);
  return `${shop.root}/${folder}`;
}

function pairsAt(a: Ground, b: Ground, repository: Repository): readonly Pair[] {
  const [left, right] = [placesAt(a), placesAt(b)];
  if (left.length === 0 && right.length === 0) {
    throw new UsageError('no engine on either side', 'name an engine that was there, or --engine');
  }
  const [first, second] = [left[0], right[0]];
  if (left.length === 1 && right.length === 1 && first && second) return [{ a: first, b: second }];
  if (left.length === 0 && right.length === 1 && second) return [{ a: sameEngineAt(a, second), b: second }];
  if (left.length === 1 && right.length === 0 && first) return [{ a: first, b: sameEngineAt(b, first) }];
  return paired(left, right, repository);
}

function placesAt({ source, path }: Ground): readonly Place[] {
  const located = source.locate(path ?? '.');
  if (located === undefined) return [];
  const { shop, folder, file } = located;
  const session = file === undefined ? undefined : shop.store.shown(file);
  return shop.loader.find({ folders: [folder] }).engines.map((each) => ({ shop, folder: each, session }));
}

/** By where they lie in the repository: those on disk may have been named through a link. */
function paired(left: readonly Place[], right: readonly Place[], repository: Repository): readonly Pair[] {
  const key = ({ shop, folder }: Place): string => `${repository.pathOf(shop.root, '.')}/${folder}`;
  const [a, b] = [left, right].map((places) => new Map(places.map((each) => [key(each), each])));
  const keys = [...new Set([...(a?.keys() ?? []), ...(b?.keys() ?? [])])].sort();
  return withMoved(keys.map((each) => ({ a: a?.get(each), b: b?.get(each) })));
}

/** Where an engine lay at the other side, under another path. */
const sameEngineAt = (ground: Ground, other: Place): Place | undefined =>
  other.session === undefined ? namedAlike(other, placesAt({ ...ground, path: other.shop.root })) : undefined;

/** The engines at and below the working directory that something changed for; all of them where the shop itself moved. */
function changedPairs(a: Ground, b: Ground, repository: Repository): readonly Pair[] {
  const [before, after] = [a.source.locate('.'), b.source.locate('.')];
  if (before === undefined || after === undefined || a.files === undefined) return pairsAt(a, b, repository);
  if (repository.pathOf(before.shop.root, '.') !== repository.pathOf(after.shop.root, '.'))
    return pairsAt(a, b, repository);
  const states = statesSince(after.shop, { repository, files: a.files });
  const changed = changedDocuments(states, after.shop.loader);
  const touched = ({ shop, folder }: Located): readonly Place[] =>
    enginesTouched(changed, shop.loader, states)
      .filter((engine) => isAtOrAbove(folder, engine) || isAtOrAbove(engine, folder))
      .map((engine) => ({ shop, folder: engine, session: undefined }));
  return paired(touched(before), touched(after), repository);
}

interface ComparedPair {
  readonly diff?: EngineDiff;
  readonly refused?: NotCompared;
  readonly hasProblems: boolean;
}

function comparePair(pair: Pair, sides: Sides, world: World, reported: Set<string>): ComparedPair {
  const read = ([pair.a, pair.b] as const).map(
    (place) => place && { place, ...readEngine(place, world, reported) },
  );
  const hasProblems = read.some((side) => side?.hasProblems);
  const broken = [sides.a, sides.b].filter((_, index) => !isReadWhole(read[index]));
  const place = pair.b ?? pair.a;
  // An engine that is there and cannot be judged is not one that is gone, and a session that cannot is none that changed.
  if (broken.length > 0 && place !== undefined) {
    return { refused: { path: place.shop.store.shown(place.folder), sides: broken }, hasProblems };
  }
  const [a, b] = read.map((side) => side?.engine && measured({ ...side, engine: side.engine }, side.place));
  const known = b ?? a;
  if (known === undefined) return { hasProblems };
  const { unitFor } = known.state;
  const diff = diffStates(a?.state ?? emptyState(unitFor), b?.state ?? emptyState(unitFor));
  return { diff: { path: known.path, name: known.name, diff, unitFor }, hasProblems };
}

/** Whether all that is compared could be read: the engine and its sessions, or the one session that is meant. */
function isReadWhole(side: (ReadEngine & { readonly place: Place }) | undefined): boolean {
  if (side === undefined) return true;
  const { engine, place } = side;
  if (engine === undefined) return false;
  return place.session === undefined
    ? engine.notJudged.length === 0
    : !engine.notJudged.includes(place.session);
}

function measured(judgeable: Judgeable, { session }: Place) {
  const { engine } = judgeable;
  const only = engine.sessions.find(({ path }) => path === session);
  const state = only === undefined ? stateOfEngine(judgeable) : stateOfSession(judgeable, only);
  return { path: engine.folder, name: engine.document.name, state };
}
