import type { EngineReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import { writtenCsv } from '../../output/escape/csv.ts';
import { json, spreadJson, writtenJson } from '../../output/escape/json.ts';
import type { Written } from '../../output/escape/language.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { writtenMarkdown } from '../../output/escape/markdown.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import { reportWithPlan } from '../../plan/reportWithPlan.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { htmlPages } from '../format/htmlPages.ts';
import { printFormats } from '../format/outputs.ts';
import { offersFor } from '../parts/offers.ts';
import { noSession } from '../shop/noSession.ts';
import { type OpenedEngine, openEngine } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';
import { type PageChoice, type PrintedPage, pageOf } from './pages.ts';
import { upTo } from './upTo.ts';

export interface PlanOptions extends PageChoice {
  readonly format: readonly FormatChoice[];
  readonly session?: string;
  readonly at?: string;
}

/** Prints what is to be done to an engine; 1 where something must be, 2 where a document has a problem. */
export async function plan(name: string | undefined, options: PlanOptions, world: World): Promise<number> {
  const html = await htmlPages(options.format);
  const opened = openEngine(name, world, options.at);
  const engine = options.session === undefined ? opened.engine : upTo(opened.engine, options.session);
  const { registry, found } = opened;
  const page = pageOf(options, reportOf(engine, opened), opened.engine, () =>
    offersFor(found, { engine, registry }),
  );
  const exit = opened.hasProblems ? 2 : page.isOpen ? 1 : 0;
  printFormats(options.format, world, (format, style) =>
    format === 'html' ? html(page.sheet()) : writtenAs(format, page, exit, style),
  );
  return exit;
}

function writtenAs(format: string, page: PrintedPage, exit: number, style: TextStyle): Written {
  switch (format) {
    case 'markdown':
      return writtenMarkdown(page.markdown());
    case 'json':
      return writtenJson(json`${spreadJson(page.json(exit))}\n`);
    case 'csv': {
      if (page.rows !== undefined) return writtenCsv(page.rows());
      throw new UsageError('only an order list is a spreadsheet', 'add --order, or take another --format');
    }
    default:
      return writtenLines(page.lines(style));
  }
}

function reportOf(engine: Engine, opened: OpenedEngine): EngineReport {
  const report = reportWithPlan(engine, opened.registry, {});
  if (report.state !== undefined) return report;
  throw noSession(opened);
}
