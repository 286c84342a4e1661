import { reportEngine } from '../checks/report.ts';
import type { JudgingOptions } from '../checks/row.ts';
import { type Diagnostic, diagnostic } from '../diagnostic/diagnostic.ts';
import { startOfFile } from '../diagnostic/place.ts';
import { isAtOrAbove } from '../documents/opened.ts';
import type { Problem } from '../shell/problem.ts';
import { repositoryAround } from '../shell/repository.ts';
import type { World } from '../shell/world.ts';
import { type CheckFormat, type CheckWriter, checkWriter } from './checkWriter.ts';
import { chooseSessions, type SessionChoice } from './chooseSessions.ts';
import { HeldOutput } from './heldOutput.ts';
import { byShop, type ShopPaths, sourceOf } from './shopAt.ts';
import { changedIn, type Since } from './since.ts';
import { Tally } from './tally.ts';
import { orUsage, UsageError } from './usage.ts';

export interface CheckOptions extends JudgingOptions, SessionChoice {
  readonly format: CheckFormat;
  readonly strict: boolean;
  readonly detail: boolean;
  /** A revision whose documents are read instead of those on disk. */
  readonly at?: string | undefined;
  /** A revision: only engines whose documents are not as they were then. */
  readonly since?: string | undefined;
}

/** Validates every document, judges every session, prints what was found; the exit code. */
export function check(paths: readonly string[], options: CheckOptions, world: World): number {
  const tally = new Tally(options.strict);
  const source = sourceOf(options.at, paths[0] ?? '.', world);
  const shops = byShop(paths, source);
  const since = sinceOf(options.since, paths[0] ?? '.', world);
  // Whether a session's name fits is known only when every engine was asked: until then nothing may be printed.
  const held = options.session === undefined ? undefined : new HeldOutput(world.out);
  const writer = checkWriter(
    { ...options, at: source.revision, since: since?.files.revision },
    { ...world, out: held ?? world.out },
  );
  for (const each of shops) checkShop(each, options, { tally, writer, since }, world);
  if (options.session !== undefined && tally.engines > 0 && tally.sessions === 0 && tally.diagnostics === 0) {
    const help = 'it is a path, a file name or a part of it, or a stage';
    throw new UsageError(`no session is known as ${options.session}`, help);
  }
  if (since === undefined && tally.engines === 0 && tally.diagnostics === 0) {
    const help = 'an engine is a folder with a document of kind: engine';
    throw new UsageError(`no engine found in ${paths.join(', ')}`, help);
  }
  writer.end(tally);
  held?.release();
  return tally.exitCode();
}

function sinceOf(revision: string | undefined, path: string, world: World): Since | undefined {
  if (revision === undefined) return undefined;
  const repository = orUsage(repositoryAround(path, world.workingDirectory));
  return { repository, files: orUsage(repository.commit(revision)) };
}

/** As many engines as are checked sooner than the optimising compiler has warmed up. */
const FEW = 30;

interface Run {
  readonly tally: Tally;
  readonly writer: CheckWriter;
  readonly since: Since | undefined;
}

function checkShop(
  { shop, selected }: ShopPaths,
  options: CheckOptions,
  { tally, writer, since }: Run,
  world: World,
): void {
  const folders = selected.map(({ folder }) => folder);
  const { engines, others } =
    since === undefined ? shop.loader.find({ folders }) : changedIn(shop, folders, since);
  if (engines.length > FEW) world.optimise?.();
  for (const folder of engines) {
    const { engine, registry, diagnostics, texts } = shop.load(folder);
    tally.countEngine();
    writer.diagnostics(tally.newDiagnostics(diagnostics), texts);
    if (engine === undefined) {
      writer.notJudged(shop.store.shown(folder));
      continue;
    }
    const report = reportEngine(engine, registry, options);
    const bearing = selected.filter(
      (each) => isAtOrAbove(each.folder, folder) || isAtOrAbove(folder, each.folder),
    );
    const chosen = chooseSessions(
      report,
      options,
      bearing.map(({ file, folder: around }) => shop.store.shown(file ?? around)),
    );
    tally.countSessions(chosen);
    writer.engine(report, chosen);
  }
  for (const path of others) {
    const { diagnostics, texts } = shop.loader.checkOther(path);
    writer.diagnostics(tally.newDiagnostics(diagnostics), texts);
  }
  writer.diagnostics(tally.newDiagnostics(shop.store.problems().map(unlistable)), new Map());
}

const unlistable = ({ message, help }: Problem): Diagnostic =>
  diagnostic('unreadable', startOfFile('.'), message, help);
