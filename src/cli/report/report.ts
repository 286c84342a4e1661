import { planSession } from '../../bench/plan.ts';
import type { EngineReport } from '../../checks/judge/report.ts';
import type { Stage } from '../../documents/session/stage.ts';
import { blankSheet } from '../../output/bench/blankSheet.ts';
import type { Written } from '../../output/escape/language.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { writtenMarkdown } from '../../output/escape/markdown.ts';
import { blankPage } from '../../output/report/blankPage.ts';
import { type Origin, shopFacts } from '../../output/report/facts.ts';
import { type Links, NO_LINKS, photoAddress } from '../../output/report/links.ts';
import type { Reader, Sheet } from '../../output/report/sheet.ts';
import { sheetMarkdown } from '../../output/report/sheetMarkdown.ts';
import { reportWithPlan } from '../../plan/reportWithPlan.ts';
import { pathInRoot } from '../../shell/discover/root.ts';
import { sha256Base64 } from '../../shell/process/digest.ts';
import { printPdf } from '../../shell/process/printPdf.ts';
import type { World } from '../../shell/world.ts';
import { offersFor } from '../parts/offers.ts';
import { upTo } from '../plan/upTo.ts';

import { noSession } from '../shop/noSession.ts';
import { type EngineFolder, type OpenedEngine, openEngine } from '../shop/resolveShop.ts';
import { orUsage } from '../usage.ts';

import { originAt } from './origin.ts';
import { sheetFor } from './sheetFor.ts';
import { type Target, targetOf, writeSheet } from './target.ts';

export interface ReportOptions {
  readonly to: string;
  readonly for: Reader;
  readonly closing?: boolean;
  /** The stage of a session that is still to be measured. */
  readonly blank?: Stage;
  readonly session?: string;
  readonly at?: string;
  readonly paper: 'A4' | 'Letter';
  readonly browser?: string;
}

/** Writes the sheet of an engine; 2 where a document has a problem, and says so on the sheet. */
export async function report(
  name: string | undefined,
  options: ReportOptions,
  world: World,
): Promise<number> {
  const target = targetOf(options.to, world);
  const opened = openEngine(name, world, options.at);
  const origin = originAt(opened.revision, world);
  const sheet =
    options.blank === undefined
      ? filledSheet(opened, origin, target, options)
      : blankFor(options.blank, opened, origin);
  writeSheet(target, await writtenAs(target, sheet, options, world));
  world.out.write(writtenLines([writtenText(options.to, sheet)]));
  return opened.hasProblems ? 2 : 0;
}

function filledSheet(opened: OpenedEngine, origin: Origin, target: Target, options: ReportOptions): Sheet {
  const engine = options.session === undefined ? opened.engine : upTo(opened.engine, options.session);
  const { registry, found } = opened;
  return sheetFor(options.closing === true ? 'closing' : options.for, {
    report: requireState(reportWithPlan(engine, registry, {}), opened),
    origin,
    engine: opened.engine,
    links: linksFrom(target, found),
    offers: () => offersFor(found, { engine, registry }),
  });
}

function blankFor(stage: Stage, { engine, registry }: OpenedEngine, origin: Origin): Sheet {
  const plan = planSession(engine, registry, { stage });
  const facts = shopFacts(origin, engine.shop ?? '');
  return blankPage(blankSheet(plan, { engine, registry, stage }), facts);
}

/** A PDF is printed elsewhere than it is kept. */
const linksFrom = ({ path, form }: Target, { shop, folder }: EngineFolder): Links =>
  form === 'pdf'
    ? NO_LINKS
    : { ...NO_LINKS, photo: (photo) => photoAddress(photo, folder, pathInRoot(shop.root, path)) };

/** `sheet.html: NOT RELEASED, 3 open`. */
const writtenText = (to: string, { status, reasons, about }: Sheet): string =>
  `${to}: ${status === undefined ? about : status.text}${reasons.length === 0 ? '' : `, ${reasons.length} open`}`;

async function writtenAs(
  { form }: Target,
  sheet: Sheet,
  options: ReportOptions,
  world: World,
): Promise<Written | Uint8Array> {
  if (form === 'md') return writtenMarkdown(sheetMarkdown(sheet));
  const { sheetHtml } = await import('../../output/page/page.ts');
  const paper = form === 'pdf' ? options.paper : undefined;
  const html = sheetHtml(sheet, { digest: sha256Base64, paper });
  return form === 'html' ? html : orUsage(printPdf(html, options.browser, world.environment));
}

function requireState(judged: EngineReport, opened: OpenedEngine): EngineReport {
  if (judged.state !== undefined) return judged;
  throw noSession(opened);
}
