import { existsSync } from 'node:fs';
import { relative, resolve, sep } from 'node:path';
import { type Registry, registryWith } from '../characteristics/registry.ts';
import { type EngineReport, reportEngine } from '../checks/report.ts';
import type { JudgingOptions } from '../checks/row.ts';
import { type Diagnostic, diagnostic } from '../diagnostic/diagnostic.ts';
import { startOfFile } from '../diagnostic/place.ts';
import { type LoadedEngine, ShopLoader } from '../shell/loadEngines.ts';
import type { Problem } from '../shell/problem.ts';
import { folderAt, shopRoot } from '../shell/root.ts';
import { workTree } from '../shell/store.ts';
import type { World } from '../shell/world.ts';
import { type CheckFormat, checkWriter } from './checkWriter.ts';
import { chooseSessions, type SessionChoice } from './chooseSessions.ts';
import { Tally } from './tally.ts';
import { UsageError } from './usage.ts';

export interface CheckOptions extends JudgingOptions, SessionChoice {
  readonly format: CheckFormat;
  readonly strict: boolean;
  readonly detail: boolean;
}

/** Validates every document, judges every session, prints what was found; the exit code. */
export function check(paths: readonly string[], options: CheckOptions, world: World): number {
  const tally = new Tally(options.strict);
  const writer = checkWriter(options, world);
  for (const { root, selected } of byShop(paths, world)) {
    let registry: Registry = registryWith([]);
    const store = workTree(root, world.workingDirectory);
    const loader = new ShopLoader(store, (own) => {
      registry = registryWith(own);
      return registry;
    });
    const { engines, others } = loader.find({
      folders: selected.map((path) => inRoot(root, folderAt(path))),
    });
    const files = new Set(
      selected.filter((path) => folderAt(path) !== path).map((path) => store.shown(inRoot(root, path))),
    );
    for (const folder of engines) {
      const loaded = loader.load(folder);
      tally.countEngine();
      writer.diagnostics(tally.newDiagnostics(loaded.diagnostics), loaded.texts);
      const report = reportOf(loaded, registry, options);
      if (report === undefined) continue;
      const chosen = chooseSessions(report, options, files);
      tally.countSessions(chosen);
      writer.engine(report, chosen);
    }
    for (const path of others) {
      const { diagnostics, texts } = loader.checkOther(path);
      writer.diagnostics(tally.newDiagnostics(diagnostics), texts);
    }
    writer.diagnostics(tally.newDiagnostics(store.problems().map(unlistable)), new Map());
  }
  if (tally.engines === 0 && tally.diagnostics === 0) {
    throw new UsageError(
      `no engine found in ${paths.join(', ')}`,
      'an engine is a folder with a document of kind: engine',
    );
  }
  writer.end(tally);
  return tally.exitCode();
}

const reportOf = (
  { engine }: LoadedEngine,
  registry: Registry,
  options: JudgingOptions,
): EngineReport | undefined => (engine === undefined ? undefined : reportEngine(engine, registry, options));

interface ShopPaths {
  readonly root: string;
  /** Absolute. */
  readonly selected: readonly string[];
}

/** Paths of one shop are looked at together. */
function byShop(paths: readonly string[], { workingDirectory }: World): readonly ShopPaths[] {
  const shops = new Map<string, string[]>();
  for (const path of paths) {
    const absolute = resolve(workingDirectory, path);
    if (!existsSync(absolute))
      throw new UsageError(`${path} does not exist`, 'name a folder or a file of the shop');
    const root = shopRoot(absolute);
    shops.set(root, [...(shops.get(root) ?? []), absolute]);
  }
  return [...shops].map(([root, selected]) => ({ root, selected }));
}

const inRoot = (root: string, path: string): string => (relative(root, path) || '.').split(sep).join('/');

const unlistable = ({ message, help }: Problem): Diagnostic =>
  diagnostic('unreadable', startOfFile('.'), message, help);
