import type { EngineReport, ReportedSession, StateReport } from '../../checks/judge/report.ts';
import type { JudgingOptions } from '../../checks/judge/row.ts';
import { type MarkedStay, marksIn } from '../../compare/parts/marks.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import { isAtOrAbove } from '../../documents/opened.ts';
import type { KnownFinding } from '../../output/check/knownFinding.ts';
import { ReportedEngine, type ShownEngine } from '../../output/check/shownEngine.ts';
import { reportWithPlan } from '../../plan/reportWithPlan.ts';
import type { Texts } from '../../shell/discover/loadEngines.ts';
import type { ShopPaths } from '../shop/resolveShop.ts';
import { textsWith } from '../shop/textsWith.ts';
import { chooseSessions, type SessionChoice } from './chooseSessions.ts';
import type { EngineParts, PartOptions } from './engineParts.ts';
import { foundIn, type KnownOptions, sessionOf, withKnown } from './known/knownFindings.ts';
import type { Looked } from './known/knownRun.ts';
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
  /** Undefined where files that its verdicts stand on have errors. */
  readonly judged: JudgedEngine | undefined;
  /** Those files. */
  readonly faulty: readonly string[];
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
  const { engine, registry, diagnostics, texts, faulty } = shop.load(folder);
  const base = {
    folder: shop.store.shown(folder),
    diagnostics,
    texts: textsWith(diagnostics, texts),
    faulty,
  };
  if (engine === undefined) return { ...base, judged: undefined, marks: [] };
  const report = reportWithPlan(engine, registry, options);
  const chosen = chooseSessions(report, options, filesNamed(folder, { shop, selected }));
  return { ...base, judged: { report, chosen }, marks: marksIn({ engine, registry }) };
}

/** The files of a call that bear on an engine, as they are shown; none where a folder does, since that asks for all of it. */
export function filesNamed(folder: string, { shop, selected }: ShopPaths): readonly string[] {
  const bearing = selected.filter(
    (each) => isAtOrAbove(each.folder, folder) || isAtOrAbove(folder, each.folder),
  );
  const files = bearing.flatMap(({ file }) => (file === undefined ? [] : [shop.store.shown(file)]));
  return files.length === bearing.length ? files : [];
}

/** An engine judged for a run, before any format has made its part of it: plain data, in JSON too. */
export interface TakenUp extends Pick<CheckedEngine, 'folder' | 'diagnostics' | 'marks' | 'faulty'> {
  readonly texts: readonly (readonly [path: string, text: string])[];
  readonly judged: (Omit<JudgedEngine, 'parts'> & { readonly shown: ShownEngine }) | undefined;
}

export function takeUp(folder: string, paths: ShopPaths, options: EngineOptions): TakenUp {
  const { judged, texts, ...rest } = judgeEngine(folder, paths, options);
  const base = { ...rest, texts: [...texts] };
  if (judged === undefined) return { ...base, judged };
  const { report } = judged;
  const chosen = withKnown(judged.chosen, base.folder, options.known);
  return {
    ...base,
    judged: {
      shown: new ReportedEngine(report, chosen, options),
      // What a session that is not judged would have said is not known.
      looked: report.engine.notJudged.length > 0 ? [] : options.all === true ? 'all' : chosen.map(sessionOf),
      found: options.known === undefined ? [] : foundIn(chosen, base.folder),
      ...countsOf(chosen),
    },
  };
}

export function withParts({ texts, judged, ...rest }: TakenUp, partsOf: EngineParts): CheckedEngine {
  const base = { ...rest, texts: new Map(texts) };
  if (judged === undefined) return { ...base, judged };
  const { shown, ...counted } = judged;
  return { ...base, judged: { ...counted, parts: partsOf(shown) } };
}
