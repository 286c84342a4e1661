import {
  type EngineReport,
  type ReportedSession,
  reportEngine,
  type StateReport,
} from '../../checks/judge/report.ts';
import type { JudgingOptions } from '../../checks/judge/row.ts';
import { type MarkedStay, marksIn } from '../../compare/parts/marks.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import { isAtOrAbove } from '../../documents/opened.ts';
import type { KnownFinding } from '../../output/check/knownFinding.ts';
import type { Texts } from '../../shell/discover/loadEngines.ts';
import type { World } from '../../shell/world.ts';
import { byShop, type ShopPaths } from '../shop/resolveShop.ts';
import { workTreeSource } from '../shop/shopSource.ts';
import { chooseSessions, type SessionChoice } from './chooseSessions.ts';
import { type EngineParts, engineParts, type PartOptions } from './engineParts.ts';
import { foundIn, type KnownOptions, sessionOf, withKnown } from './knownFindings.ts';
import type { Looked } from './knownRun.ts';
import { type Counts, countsOf } from './tally.ts';

export interface EngineOptions extends JudgingOptions, SessionChoice, PartOptions {
  readonly known?: KnownOptions | undefined;
}

/** What a run takes from one engine: plain data, so that it may come from another thread. */
export interface CheckedEngine {
  /** As it is shown. */
  readonly folder: string;
  readonly diagnostics: readonly Diagnostic[];
  /** Of the documents that have diagnostics. */
  readonly texts: Texts;
  /** Undefined where its engine, limits or instruments file has errors. */
  readonly judged: JudgedEngine | undefined;
  /** Of its parts: one mark is in one engine at a time. */
  readonly marks: readonly MarkedStay[];
}

interface JudgedEngine extends Counts {
  /** What each format of the call has made of it. */
  readonly parts: readonly unknown[];
  /** Where it is asked which findings were known, what was looked at and found. */
  readonly looked: Looked;
  readonly found: readonly KnownFinding[];
}

/** An engine of a run, judged, and what of it the run is about. */
export interface JudgedFolder extends Omit<CheckedEngine, 'judged'> {
  readonly judged:
    | { readonly report: EngineReport; readonly chosen: readonly (ReportedSession | StateReport)[] }
    | undefined;
}

export function judgeEngine(
  folder: string,
  { shop, selected }: ShopPaths,
  options: JudgingOptions & SessionChoice,
): JudgedFolder {
  const { engine, registry, diagnostics, texts } = shop.load(folder);
  const base = { folder: shop.store.shown(folder), diagnostics, texts: textsWith(diagnostics, texts) };
  if (engine === undefined) return { ...base, judged: undefined, marks: [] };
  const report = reportEngine(engine, registry, options);
  const bearing = selected.filter(
    (each) => isAtOrAbove(each.folder, folder) || isAtOrAbove(folder, each.folder),
  );
  const chosen = chooseSessions(
    report,
    options,
    bearing.map(({ file, folder: around }) => shop.store.shown(file ?? around)),
  );
  return { ...base, judged: { report, chosen }, marks: marksIn({ engine, registry }) };
}

export function checkEngine(
  folder: string,
  paths: ShopPaths,
  options: EngineOptions,
  partsOf: EngineParts,
): CheckedEngine {
  const { judged, ...base } = judgeEngine(folder, paths, options);
  if (judged === undefined) return { ...base, judged };
  const { report } = judged;
  const chosen = withKnown(judged.chosen, base.folder, options.known);
  return {
    ...base,
    judged: {
      parts: partsOf(report, chosen),
      // What a session that is not judged would have said is not known.
      looked: report.engine.notJudged.length > 0 ? [] : options.all === true ? 'all' : chosen.map(sessionOf),
      found: options.known === undefined ? [] : foundIn(chosen, base.folder),
      ...countsOf(chosen),
    },
  };
}

const textsWith = (diagnostics: readonly Diagnostic[], texts: Texts): Texts =>
  new Map(
    diagnostics.flatMap(({ place: { path } }) => {
      const text = texts.get(path);
      return text === undefined ? [] : [[path, text] as const];
    }),
  );

/** What a thread must know to check engines of one shop as the run would. */
export interface CheckCall {
  readonly paths: readonly string[];
  readonly options: EngineOptions;
  readonly world: Pick<World, 'workingDirectory' | 'environment' | 'today'> & {
    readonly isTTY: boolean | undefined;
    readonly columns: number | undefined;
  };
}

/** An engine of a call's shops: by the shop's root, and by its folder there. */
export interface EngineTask {
  readonly root: string;
  readonly folder: string;
}

/** Opens the shops of a call anew, in a thread of its own; what formats make of an engine goes back to the run. */
export async function engineChecker({
  paths,
  options,
  world,
}: CheckCall): Promise<(task: EngineTask) => CheckedEngine> {
  const { isTTY, columns, ...around } = world;
  const out = {
    ...(isTTY === undefined ? {} : { isTTY }),
    ...(columns === undefined ? {} : { columns }),
    write: () => undefined,
  };
  const here: World = { ...around, out, err: out };
  const shops = new Map(byShop(paths, workTreeSource(here)).map((each) => [each.shop.root, each]));
  const partsOf = await engineParts(options, here);
  return ({ root, folder }) => {
    const shop = shops.get(root);
    if (shop === undefined) throw new Error(`no shop at ${root}`);
    return checkEngine(folder, shop, options, partsOf);
  };
}
