import type { JudgingOptions } from '../../checks/judge/row.ts';
import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import { startOfFile } from '../../diagnostic/place.ts';
import type { Found } from '../../shell/discover/loadEngines.ts';
import { repositoryAround } from '../../shell/git/repository.ts';
import type { Problem } from '../../shell/problem.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { Outputs } from '../format/outputs.ts';
import { byShop, requireWorkTree, type ShopPaths, sourceOf } from '../shop/resolveShop.ts';
import { stagedSource } from '../shop/revisionSource.ts';
import type { ShopSource } from '../shop/shopSource.ts';
import { orUsage, UsageError } from '../usage.ts';
import { CheckWriters } from './checkWriters.ts';
import type { SessionChoice } from './chooseSessions.ts';
import { type EngineSource, engineSource } from './engineSource.ts';
import { HeldOutput } from './heldOutput.ts';
import { changedIn, type Since } from './since.ts';
import { Tally } from './tally.ts';
import { unreadTold } from './unreadTold.ts';

export interface CheckOptions extends JudgingOptions, SessionChoice {
  readonly format: readonly FormatChoice[];
  readonly strict: boolean;
  readonly detail: boolean;
  /** A revision whose documents are read instead of those on disk. */
  readonly at?: string | undefined;
  /** What is staged in git is read, of the engines for which that differs from the last commit; nothing is printed where all is well. */
  readonly staged?: boolean | undefined;
  /** A revision: only engines whose documents are not as they were then. */
  readonly since?: string | undefined;
}

/** Validates every document, judges every session, prints what was found; the exit code. */
export async function check(paths: readonly string[], options: CheckOptions, world: World): Promise<number> {
  const tally = new Tally(options.strict);
  const { source, since } = groundOf(options, paths[0] ?? '.', world);
  const shops = byShop(paths, source);
  // Whether a session's name fits, and whether all is well, is known only when every engine was asked.
  const held =
    options.session !== undefined || options.staged === true ? new HeldOutput(world.out) : undefined;
  const found = shops.map((paths) => ({ paths, found: foundIn(paths, since) }));
  const engineCount = found.reduce((sum, each) => sum + each.found.engines.length, 0);
  const isOneOfMany = options.staged || (options.session === undefined && !options.all && engineCount > 1);
  const outputs = new Outputs({ ...world, out: held ?? world.out });
  const head = {
    strict: options.strict,
    staged: options.staged === true,
    at: source.revision,
    since: since?.files.revision,
  };
  const writer = await CheckWriters.open(options.format, head, { outputs, world, detail: options.detail });
  const engines = await engineSource(paths, { ...options, isOneOfMany }, world);
  for (const each of found) await checkShop(each, { tally, writer, engines });
  if (options.session !== undefined && tally.engines > 0 && tally.sessions === 0 && tally.diagnostics === 0) {
    const help = 'it is a path, a file name or a part of it, or a stage';
    throw new UsageError(`no session is known as ${options.session}`, help);
  }
  if (since === undefined && !options.staged && tally.engines === 0 && tally.diagnostics === 0) {
    const help = 'an engine is a folder with a document of kind: engine';
    throw new UsageError(`no engine found in ${paths.join(', ')}`, help);
  }
  writer.end(tally.totals());
  if (!(options.staged && printsText(options) && tally.isWell())) held?.release();
  outputs.save();
  return tally.exitCode();
}

const printsText = ({ format }: CheckOptions): boolean =>
  format.some((each) => each.format === 'text' && each.file === undefined);

/** Where documents are read, and since when they have to have changed. */
interface Ground {
  readonly source: ShopSource;
  readonly since: Since | undefined;
}

function groundOf({ at, since, staged }: CheckOptions, path: string, world: World): Ground {
  if (staged) {
    const repository = orUsage(repositoryAround(path, world));
    requireWorkTree(repository, 'nothing is staged there');
    // Before the first commit everything that is staged is new.
    const head = repository.commit('HEAD');
    const last = head.ok ? { repository, files: head.value } : undefined;
    return { source: stagedSource(repository, world), since: last };
  }
  const source = sourceOf(at, path, world);
  if (since === undefined) return { source, since };
  const repository = orUsage(repositoryAround(path, world));
  if (at === undefined) requireWorkTree(repository, 'read a commit with --at');
  return { source, since: { repository, files: orUsage(repository.commit(since)) } };
}

interface Run {
  readonly tally: Tally;
  readonly writer: CheckWriters;
  readonly engines: EngineSource;
}

interface FoundInShop {
  readonly paths: ShopPaths;
  readonly found: Found;
}

function foundIn({ shop, selected }: ShopPaths, since: Since | undefined): Found {
  const folders = selected.map(({ folder }) => folder);
  return since === undefined ? shop.loader.find({ folders }) : changedIn(shop, folders, since);
}

async function checkShop({ paths, found }: FoundInShop, { tally, writer, engines }: Run): Promise<void> {
  const { shop, selected } = paths;
  for await (const { folder, diagnostics, texts, judged } of engines(found.engines, paths)) {
    tally.countEngine();
    writer.diagnostics(tally.newDiagnostics(diagnostics), texts);
    if (judged === undefined) writer.notJudged(folder);
    else {
      tally.countSessions(judged);
      writer.engine(judged.parts);
    }
  }
  const named = selected.map(({ file }) => file);
  for (const path of found.others) {
    const { diagnostics, texts } = shop.loader.checkOther(path, named.includes(path));
    writer.diagnostics(tally.newDiagnostics(diagnostics), texts);
  }
  const unread = unreadTold(found.unread);
  writer.diagnostics(tally.newDiagnostics(unread.diagnostics), new Map());
  tally.countFindings(unread.findings);
  writer.findings(unread.findings);
  writer.diagnostics(tally.newDiagnostics(shop.store.problems().map(unlistable)), new Map());
}

const unlistable = ({ message, help }: Problem): Diagnostic =>
  diagnostic('unreadable', startOfFile('.'), message, help);
