import type { Registry } from '../../characteristics/registry.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Engine } from '../../documents/assemble.ts';
import { diagnosticsLines, faultyText } from '../../output/check/runText.ts';
import { writtenLines } from '../../output/escape/line.ts';
import type { Texts } from '../../shell/discover/loadEngines.ts';
import { standingAt } from '../../shell/discover/root.ts';
import type { Revision } from '../../shell/git/commitFiles.ts';
import { type Repository, repositoryAround } from '../../shell/git/repository.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { orUsage, UsageError } from '../usage.ts';
import { enginesNamed, isWholeName } from './enginesNamed.ts';
import { revisionSource } from './revisionSource.ts';
import { type Located, type Shop, type ShopSource, workTreeSource } from './shopSource.ts';

/** The working tree, or the commit that a call asks for with `--at`, of the repository around `path`. */
export const sourceOf = (at: string | undefined, path: string, world: World): ShopSource =>
  at === undefined
    ? workTreeSource(world)
    : revisionSource(at, orUsage(repositoryAround(path, world)), world);

/** A bare repository has commits alone: what its folder holds are git's own files, and no shop that lost its engines. */
export function requireWorkTree({ place }: Repository, help: string): void {
  if (place.bare) throw new UsageError(`${place.folder} is a bare repository, without a working tree`, help);
}

export interface ShopPaths {
  readonly shop: Shop;
  readonly selected: readonly Located[];
}

/** The paths of a call by the shop they lie in; where no such path is, the name of an engine or a part of it. */
export function byShop(paths: readonly string[], source: ShopSource): readonly ShopPaths[] {
  const shops = new Map<Shop, Located[]>();
  for (const path of paths) {
    const located = source.locate(path) ?? engineCalled(path, source);
    if (located === undefined) throw notThere(path, source);
    requireRead(path, located);
    shops.set(located.shop, [...(shops.get(located.shop) ?? []), located]);
  }
  return [...shops].map(([shop, selected]) => ({ shop, selected }));
}

/** What a call names is not passed over as others are. */
function requireRead(path: string, { shop, folder, file }: Located): void {
  const reason = shop.loader.whyUnread(folder, file);
  if (reason !== undefined) throw new UsageError(`${path} is not read, since ${reason.why}`, reason.help);
}

function engineCalled(name: string, source: ShopSource): Located | undefined {
  const found = findEngine(name, source);
  return found && { ...found, file: undefined };
}

function notThere(path: string, { revision, locate }: ShopSource): UsageError {
  const engines = locate('.')?.shop.loader.find(EVERYWHERE).engines ?? [];
  const known = engines.length === 0 ? '' : `: ${engines.join(', ')}`;
  return revision === undefined
    ? new UsageError(`${path} does not exist`, `name an engine, or a folder or a file of the shop${known}`)
    : new UsageError(`${path} is not in ${revision.name}`, 'name a folder or a file that was there then');
}

export interface EngineFolder {
  readonly shop: Shop;
  /** Relative to the shop's root. */
  readonly folder: string;
}

/**
 * The one engine that a call is about: a path in it, its folder's name, its `name:` or a unique part of either, in any
 * case; without a name the engine around the working directory, or the only one of the shop.
 */
export function engineNamed(
  name: string | undefined,
  world: World,
  source: ShopSource = workTreeSource(world),
): EngineFolder {
  const found = findEngine(name, source);
  if (found !== undefined) return found;
  const engines =
    (source.locate(name ?? '.') ?? source.locate('.'))?.shop.loader.find(EVERYWHERE).engines ?? [];
  const help = engines.length === 0 ? undefined : `the shop has ${engines.join(', ')}`;
  throw new UsageError(name === undefined ? 'no engine here' : `unknown engine ${name}`, help);
}

/** Undefined where there is none; it throws a UsageError where there are several. */
export function findEngine(name: string | undefined, source: ShopSource): EngineFolder | undefined {
  const located = source.locate(name ?? '.');
  const around = located === undefined ? undefined : onlyOf(located, name ?? 'this folder');
  if (located !== undefined && around !== undefined) return { shop: located.shop, folder: around };
  const shop = (located ?? source.locate('.'))?.shop;
  const engines = shop?.loader.find(EVERYWHERE).engines ?? [];
  const named = name === undefined || shop === undefined ? engines : enginesNamed(name, shop, engines);
  const folder = only(named, name ?? 'this shop');
  return shop === undefined || folder === undefined ? undefined : { shop, folder };
}

/** Whether a word is an engine's path, or its whole name. */
export function isCalled(word: string, source: ShopSource): boolean {
  if (source.locate(word) !== undefined) return true;
  const shop = source.locate('.')?.shop;
  return shop !== undefined && isWholeName(word, shop, shop.loader.find(EVERYWHERE).engines);
}

/** Engines that a word may mean, none where it is none's name. */
export function engineNames(word: string, source: ShopSource): readonly string[] {
  const shop = source.locate('.')?.shop;
  return shop === undefined ? [] : enginesNamed(word, shop, shop.loader.find(EVERYWHERE).engines);
}

const EVERYWHERE = { folders: ['.'] };

const onlyOf = ({ shop, folder }: Located, name: string): string | undefined =>
  only(shop.loader.find({ folders: [folder] }).engines, name);

/** An engine's folder, read; problems with its documents were told on stderr. */
export interface ReadEngine {
  /** Undefined where files that its verdicts stand on have errors. */
  readonly engine: Engine | undefined;
  /** Those files. */
  readonly faulty: readonly string[];
  readonly registry: Registry;
  readonly hasProblems: boolean;
}

/** `told` are the problems that a run has told already: of two states of a shop most have the same. */
export function readEngine(
  { shop, folder }: EngineFolder,
  world: World,
  reported: Set<string> = new Set(),
): ReadEngine {
  const { engine, registry, diagnostics, texts, faulty } = shop.load(folder);
  reportProblems(diagnostics, texts, world, reported);
  return { engine, registry, faulty, hasProblems: diagnostics.length > 0 };
}

/** On stderr, but for those that were reported before. */
export function reportProblems(
  diagnostics: readonly Diagnostic[],
  texts: Texts,
  world: World,
  reported: Set<string>,
): void {
  const fresh = diagnostics.filter(({ code, message, place }) => {
    const key = `${place.path}:${place.line}:${place.column} ${code} ${message}`;
    const isNew = !reported.has(key);
    reported.add(key);
    return isNew;
  });
  const style = textStyle(world.err, world.environment, true);
  world.err.write(writtenLines(diagnosticsLines(fresh, texts, style)));
}

/** An engine that can be judged. */
export interface OpenedEngine extends ReadEngine {
  readonly engine: Engine;
  readonly found: EngineFolder;
  /** The commit that it was read from; undefined for the working tree. */
  readonly revision: Revision | undefined;
}

/** The engine that a call is about, read; it throws a UsageError where nothing can be judged. */
export function openEngine(name: string | undefined, world: World, at?: string): OpenedEngine {
  const isPath = name !== undefined && standingAt(name, world.workingDirectory) !== undefined;
  const source = sourceOf(at, isPath ? name : '.', world);
  const found = engineNamed(name, world, source);
  return { ...judgeable(found, world), found, revision: source.revision };
}

export function judgeable(found: EngineFolder, world: World): ReadEngine & { readonly engine: Engine } {
  const read = readEngine(found, world);
  if (read.engine !== undefined) return { ...read, engine: read.engine };
  throw new UsageError(
    `${found.shop.store.shown(found.folder)} cannot be judged: ${faultyText(read.faulty)}`,
    'correct the documents above',
  );
}

function only(engines: readonly string[], name: string): string | undefined {
  if (engines.length > 1) {
    throw new UsageError(`${name} may be any of several engines: ${engines.join(', ')}`, 'name one of them');
  }
  return engines[0];
}
