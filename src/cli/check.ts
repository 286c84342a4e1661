import { reportEngine } from '../checks/report.ts';
import type { JudgingOptions } from '../checks/row.ts';
import { type Diagnostic, diagnostic } from '../diagnostic/diagnostic.ts';
import { startOfFile } from '../diagnostic/place.ts';
import type { Problem } from '../shell/problem.ts';
import { folderAt } from '../shell/root.ts';
import type { World } from '../shell/world.ts';
import { type CheckFormat, type CheckWriter, checkWriter } from './checkWriter.ts';
import { chooseSessions, type SessionChoice } from './chooseSessions.ts';
import { HeldOutput } from './heldOutput.ts';
import { byShop, type ShopPaths, shopAt } from './shopAt.ts';
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
  // Whether a session's name fits is known only when every engine was asked: until then nothing may be printed.
  const held = options.session === undefined ? undefined : new HeldOutput(world.out);
  const writer = checkWriter(options, { ...world, out: held ?? world.out });
  for (const each of byShop(paths, world)) checkShop(each, options, { tally, writer }, world);
  if (options.session !== undefined && tally.engines > 0 && tally.sessions === 0 && tally.diagnostics === 0) {
    const help = 'it is a path, a file name or a part of it, or a stage';
    throw new UsageError(`no session is known as ${options.session}`, help);
  }
  if (tally.engines === 0 && tally.diagnostics === 0) {
    const help = 'an engine is a folder with a document of kind: engine';
    throw new UsageError(`no engine found in ${paths.join(', ')}`, help);
  }
  writer.end(tally);
  held?.release();
  return tally.exitCode();
}

/** As many engines as are checked sooner than the optimising compiler has warmed up. */
const FEW = 30;

interface Run {
  readonly tally: Tally;
  readonly writer: CheckWriter;
}

function checkShop(
  { root, selected }: ShopPaths,
  options: CheckOptions,
  { tally, writer }: Run,
  world: World,
): void {
  const shop = shopAt(root, world);
  const { engines, others } = shop.loader.find({
    folders: selected.map((path) => shop.inRoot(folderAt(path))),
  });
  if (engines.length > FEW) world.optimise?.();
  const files = new Set(
    selected.filter((path) => folderAt(path) !== path).map((path) => shop.store.shown(shop.inRoot(path))),
  );
  for (const folder of engines) {
    const { engine, registry, diagnostics, texts } = shop.load(folder);
    tally.countEngine();
    writer.diagnostics(tally.newDiagnostics(diagnostics), texts);
    if (engine === undefined) {
      writer.notJudged(shop.store.shown(folder));
      continue;
    }
    const report = reportEngine(engine, registry, options);
    const chosen = chooseSessions(report, options, files);
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
