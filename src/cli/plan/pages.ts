import type { EngineReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { OfferedParts } from '../../documents/parts/offeredPart.ts';
import type { Line } from '../../output/escape/line.ts';
import type { Markdown } from '../../output/escape/markdown.ts';
import { closingPage } from '../../output/plan/closingPage.ts';
import { customerPage } from '../../output/plan/customerPage.ts';
import { fitPage } from '../../output/plan/fitPage.ts';
import { machineShopPage } from '../../output/plan/machineShopPage.ts';
import { afterNotTaken } from '../../output/plan/notTaken.ts';
import { orderPage, orderRows } from '../../output/plan/orderPage.ts';
import type { Page } from '../../output/plan/page.ts';
import { pageJson } from '../../output/plan/pageJson.ts';
import { pageMarkdown } from '../../output/plan/pageMarkdown.ts';
import { pageLines } from '../../output/plan/pageText.ts';
import { planJson } from '../../output/plan/planJson.ts';
import { planPage, standing } from '../../output/plan/planPage.ts';
import { workPage } from '../../output/plan/workPage.ts';
import { NO_LINKS } from '../../output/report/links.ts';
import { pageSheet } from '../../output/report/pageSheet.ts';
import type { Sheet } from '../../output/report/sheet.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import { closingOf, mayClose } from '../../plan/closing/closing.ts';
import { fitsOf, isShort, pistonsFor } from '../../plan/fit/fits.ts';
import { agreementsOf } from '../../plan/handover/agreement.ts';
import { orderList } from '../../plan/order/orderList.ts';
import { workPlan } from '../../plan/work/workPlan.ts';

/** Which page is asked for; the plan itself where none is. */
export interface PageChoice {
  readonly for?: 'customer' | 'machine-shop';
  readonly fit?: boolean;
  readonly order?: boolean;
  readonly closing?: boolean;
}

/** A page, in every way in which it can be printed. */
export interface PrintedPage {
  readonly isOpen: boolean;
  readonly lines: (style: TextStyle) => readonly Line[];
  readonly markdown: () => readonly Markdown[];
  readonly json: (exit: number) => unknown;
  readonly sheet: () => Sheet;
  /** As a spreadsheet, where it is one. */
  readonly rows?: () => readonly (readonly (string | number)[])[];
}

/** `whole` is the engine with all its sessions: what was agreed to later is agreed to. */
export function pageOf(
  choice: PageChoice,
  report: EngineReport,
  whole: Engine,
  offersFor: () => OfferedParts,
): PrintedPage {
  const { engine, registry, state } = report;
  if (state === undefined) throw new Error('an engine without a session has no plan');
  const made = workPlan(engine, registry, state);
  const agreements = () => agreementsOf(whole, registry, made.at);
  const about = [standing(engine, made.at)];
  const hasMust = made.jobs.some(({ urgency }) => urgency === 'must');
  const printed = (name: string, bare: Page, isOpen: boolean): PrintedPage => {
    const page = { ...bare, answer: afterNotTaken(engine, bare.answer) };
    return {
      isOpen,
      lines: (style) => pageLines(page, style),
      markdown: () => pageMarkdown(page),
      json: (exit) => pageJson(name, page, engine, made.at, exit),
      sheet: () => pageSheet(page, [], NO_LINKS),
    };
  };
  if (choice.for === 'customer') return printed('customer', customerPage(made, agreements(), about), hasMust);
  if (choice.for === 'machine-shop')
    return printed(
      'machine-shop',
      machineShopPage(made, agreements(), pistonsFor(made.context, offersFor()), about),
      hasMust,
    );
  if (choice.fit === true) {
    const fits = fitsOf(made.context, offersFor());
    return printed('fit', fitPage(fits, engine, about), isShort(fits));
  }
  if (choice.order === true) {
    const lines = orderList(made.context, made.jobs, offersFor());
    const rows = () => orderRows(lines, engine);
    return { ...printed('order', orderPage(lines, engine, about), false), rows };
  }
  if (choice.closing === true) {
    const closing = closingOf(report, state);
    return printed('closing', closingPage(closing, engine, about), !mayClose(closing));
  }
  const plan = planPage(made);
  return { ...printed('work', workPage(plan), hasMust), json: (exit) => planJson(made, plan, exit) };
}
