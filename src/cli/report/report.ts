import { type EngineReport, reportEngine } from '../../checks/judge/report.ts';
import type { Written } from '../../output/escape/language.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { writtenMarkdown } from '../../output/escape/markdown.ts';
import { type Links, NO_LINKS, photoAddress } from '../../output/report/links.ts';
import type { Reader, Sheet } from '../../output/report/sheet.ts';
import { sheetMarkdown } from '../../output/report/sheetMarkdown.ts';
import { pathInRoot } from '../../shell/discover/root.ts';
import { sha256Base64 } from '../../shell/process/digest.ts';
import { printPdf } from '../../shell/process/printPdf.ts';
import type { World } from '../../shell/world.ts';
import { offersFor } from '../parts/offers.ts';
import { upTo } from '../plan/upTo.ts';
import { type EngineFolder, openEngine } from '../shop/resolveShop.ts';
import { orUsage, UsageError } from '../usage.ts';
import { originAt } from './origin.ts';
import { sheetFor } from './sheetFor.ts';
import { type Target, targetOf, writeSheet } from './target.ts';

export interface ReportOptions {
  readonly to: string;
  readonly for: Reader;
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
  const engine = options.session === undefined ? opened.engine : upTo(opened.engine, options.session);
  const judged = reportEngine(engine, opened.registry, {});
  const { registry, found } = opened;
  const sheet = sheetFor(options.for, {
    report: requireState(judged),
    origin: originAt(opened.revision, world),
    engine: opened.engine,
    links: linksFrom(target, found),
    offers: () => offersFor(found, { engine, registry }),
  });
  writeSheet(target, await writtenAs(target, sheet, options, world));
  world.out.write(writtenLines([writtenText(options.to, sheet)]));
  return opened.hasProblems ? 2 : 0;
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

function requireState(judged: EngineReport): EngineReport {
  if (judged.state !== undefined) return judged;
  throw new UsageError(`${judged.engine.document.name} has no session yet`, 'tenths new session begins one');
}
