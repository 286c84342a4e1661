import { type Finding, sortFindings } from '../../checks/finding.ts';
import type { JudgingOptions } from '../../checks/judge/row.ts';
import { type MarkedStay, markConflicts } from '../../compare/parts/marks.ts';
import { repositoryAround } from '../../shell/git/repository.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { Outputs } from '../format/outputs.ts';
import { cameOutIn } from '../parts/shelf.ts';
import { Progress } from '../shop/progress.ts';
import { byShop, requireWorkTree, type ShopPaths, sourceOf } from '../shop/resolveShop.ts';
import { stagedSource } from '../shop/revisionSource.ts';
import type { Shop, ShopSource } from '../shop/shopSource.ts';
import { orUsage, UsageError } from '../usage.ts';
import { CheckWriters } from './checkWriters.ts';
import type { SessionChoice } from './chooseSessions.ts';
import { type EngineSource, engineSource } from './engineSource.ts';
import { HeldOutput } from './heldOutput.ts';
import { readKnown, writeKnown } from './known/knownFile.ts';
import { asKnown, filesWithKnown } from './known/knownFindings.ts';
import { coveredBy, KnownRun } from './known/knownRun.ts';
import { outsideEngines } from './outsideEngines.ts';
import { type Share, shareOf } from './share.ts';
import { type Changed, foundIn, type Since } from './since.ts';
import { Tally } from './tally.ts';

export interface CheckOptions extends JudgingOptions, SessionChoice {
  readonly format: readonly FormatChoice[];
  readonly strict: boolean;
  readonly detail: boolean;
  /** A file with findings that were known before: they do not fail. */
  readonly known?: string | undefined;
  /** Writes into that file whatever is found now. */
  readonly updateKnown?: boolean | undefined;
  /** Only every so many engines, to be gathered with the other shares. */
  readonly share?: Share | undefined;
  /** A revision whose documents are read instead of those on disk. */
  readonly at?: string | undefined;
  /** What is staged in git is read, of the engines for which that differs from the last commit; nothing is printed where all is well. */
  readonly staged?: boolean | undefined;
  /** False where what earlier runs kept is left alone. */
  readonly cache?: boolean | undefined;
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
  const whole = shops.map((paths) => ({ paths, ...foundIn(paths, since) }));
  const found = sharesOf(whole, options.share);
  const engineCount = whole.reduce((sum, each) => sum + each.found.engines.length, 0);
  const isOneOfMany = options.staged || (options.session === undefined && !options.all && engineCount > 1);
  const outputs = new Outputs({ ...world, out: held ?? world.out });
  const head = {
    strict: options.strict,
    staged: options.staged === true,
    at: source.revision,
    since: since?.files.revision,
    share: options.share && { ...options.share, total: engineCount },
  };
  const writer = await CheckWriters.open(options.format, head, { outputs, world, detail: options.detail });
  const known = knownRun(paths, options, world);
  for (const each of whole) passOver(each, known);
  const engines = await engineSource(paths, { ...options, isOneOfMany, known: known?.options }, world);
  const progress = progressOf(found, writer, world);
  for (const each of found) await checkShop(each, { tally, writer, engines, known, progress });
  if (options.session !== undefined && tally.engines > 0 && tally.sessions === 0 && tally.diagnostics === 0) {
    const help = 'it is a path, a file name or a part of it, or a stage';
    throw new UsageError(`unknown session ${options.session}`, help);
  }
  if (since === undefined && !options.staged && engineCount === 0 && tally.diagnostics === 0) {
    const help = 'an engine is a folder with a document of kind: engine';
    throw new UsageError(`no engine found in ${paths.join(', ')}`, help);
  }
  writer.end(tally.totals(known?.gone()));
  if (!(options.staged && writer.isQuietIfWell && tally.isWell())) held?.release();
  outputs.save();
  if (options.known !== undefined && known?.options.isUpdating)
    writeKnown(options.known, known.updated(), world);
  return tally.exitCode();
}

/** Engines of another share are looked at there. */
function passOver({ paths, found }: FoundInShop, known: KnownRun | undefined): void {
  for (const folder of found.engines) known?.look(paths.shop.store.shown(folder), [], []);
}

function sharesOf(found: readonly FoundInShop[], share: Share | undefined): readonly FoundInShop[] {
  if (share === undefined) return found;
  if (found.length > 1)
    throw new UsageError(
      '--share takes the engines of one shop, and these paths are in several',
      'name paths of one shop',
    );
  return found.map((each) => ({
    ...each,
    found: shareOf(each.found, share),
    findings: share.number === 1 ? each.findings : [],
  }));
}

function knownRun(paths: readonly string[], options: CheckOptions, world: World): KnownRun | undefined {
  const { known: file, updateKnown: isUpdating = false, since, staged, session, share } = options;
  if (file === undefined) {
    if (isUpdating)
      throw new UsageError('--update-known writes the file of --known', 'name it: --known FILE');
    return undefined;
  }
  // Such a run passes over engines on purpose.
  const isPartial =
    since !== undefined || staged === true || session !== undefined || (share?.number ?? 1) > 1;
  const findings = readKnown(file, isUpdating, world);
  return new KnownRun({ findings, isUpdating }, isPartial ? () => false : coveredBy(paths));
}

/** None between the lines of what goes to the same terminal as it is made. */
function progressOf(
  found: readonly FoundInShop[],
  { isWaited }: CheckWriters,
  world: World,
): Progress | undefined {
  const count = found.reduce((sum, each) => sum + each.found.engines.length, 0);
  return world.out.isTTY === true && !isWaited ? undefined : new Progress(count, world);
}

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
  readonly known: KnownRun | undefined;
  readonly progress: Progress | undefined;
}

interface FoundInShop extends Changed {
  readonly paths: ShopPaths;
}

async function checkShop(
  { paths, found, findings: ofDeleted }: FoundInShop,
  { tally, writer, engines, known, progress }: Run,
): Promise<void> {
  const marks: MarkedStay[] = [];
  for await (const each of engines(found.engines, paths)) {
    const { folder, diagnostics, texts, judged, marks: own, faulty } = each;
    progress?.report(tally.engines);
    tally.countEngine();
    marks.push(...own);
    writer.diagnostics(tally.newDiagnostics(diagnostics), texts);
    if (judged === undefined) {
      writer.notJudged(folder, faulty);
      known?.look(folder, [], []);
    } else {
      tally.countSessions(judged);
      writer.engine(judged.parts);
      known?.look(folder, judged.looked, judged.found);
    }
  }
  const report = (all: readonly Finding[]): void => {
    const findings = filesWithKnown(all, known?.options);
    tally.countFindings(findings);
    writer.findings(findings);
    known?.lookAtFiles(findings.map((each) => asKnown(each)));
  };
  for (const trouble of outsideEngines(found, paths)) {
    writer.diagnostics(tally.newDiagnostics(trouble.diagnostics), trouble.texts);
    report(trouble.findings);
  }
  report(ofDeleted);
  report(markFindings(marks, paths.shop));
}

/** Documents of parts are read only where one mark is in several engines. */
function markFindings(marks: readonly MarkedStay[], shop: Shop): readonly Finding[] {
  return markConflicts(marks, []).length === 0 ? [] : sortFindings(markConflicts(marks, cameOutIn(shop)));
}
