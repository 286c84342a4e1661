import type { EngineReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { OfferedParts } from '../../documents/parts/offeredPart.ts';
import { closingPage } from '../../output/plan/closingPage.ts';
import { fitPage } from '../../output/plan/fit/fitPage.ts';
import type { ShownPage } from '../../output/plan/formats/shownPage.ts';
import { customerPage } from '../../output/plan/handover/customerPage.ts';
import { machineShopPage } from '../../output/plan/handover/machineShopPage.ts';
import { afterNotTaken } from '../../output/plan/notTaken.ts';
import { orderPage, orderRows } from '../../output/plan/orderPage.ts';
import type { Page } from '../../output/plan/page.ts';
import { pageJson } from '../../output/plan/pageJson.ts';
import { planJson } from '../../output/plan/planJson.ts';
import { planPage, standing } from '../../output/plan/planPage.ts';
import { workPage } from '../../output/plan/workPage.ts';
import { closingOf, mayClose } from '../../plan/closing/closing.ts';
import { fitsOf, isShort, pistonsFor } from '../../plan/fit/fits.ts';
import { agreementsOf } from '../../plan/handover/agreement.ts';
import { orderList } from '../../plan/order/orderList.ts';
import { workPlan } from '../../plan/work/workPlan.ts';
import { UsageError } from '../usage.ts';

/** Which page is asked for; the plan itself where none is. */
export interface PageChoice {
  readonly for?: 'customer' | 'machine-shop';
  readonly fit?: boolean;
  readonly order?: boolean;
  readonly closing?: boolean;
}

interface OpenPage extends Omit<ShownPage, 'exit'> {
  readonly isOpen: boolean;
}

/** `whole` is the engine with all its sessions: what was agreed to later is agreed to. */
export function pageOf(
  choice: PageChoice,
  report: EngineReport,
  whole: Engine,
  offersFor: () => OfferedParts,
): OpenPage {
  const { engine, registry, state } = report;
  if (state === undefined) throw new Error('an engine without a session has no plan');
  const made = workPlan(engine, registry, state);
  const agreements = () => agreementsOf(whole, registry, made.at);
  const about = [standing(engine, made.at)];
  const hasMust = made.jobs.some(({ urgency }) => urgency === 'must');
  const printed = (name: string, bare: Page, isOpen: boolean): OpenPage => {
    const page = { ...bare, answer: afterNotTaken(engine, bare.answer) };
    const data = (exit: number) => pageJson(name, page, engine, made.at, exit);
    return { page, isOpen, data, rows: noSpreadsheet };
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
    return printed('fit', fitPage(fits, made.context, about), isShort(fits));
  }
  if (choice.order === true) {
    const lines = orderList(made.context, made.jobs, offersFor(), agreements());
    const rows = () => orderRows(lines, engine);
    return { ...printed('order', orderPage(lines, engine, about), false), rows };
  }
  if (choice.closing === true) {
    const closing = closingOf(report, state);
    return printed('closing', closingPage(closing, engine, about), !mayClose(closing));
  }
  const plan = planPage(made);
  return { ...printed('work', workPage(plan), hasMust), data: (exit) => planJson(made, plan, exit) };
}

const noSpreadsheet = (): never => {
  throw new UsageError('only an order list is a spreadsheet', 'add --order, or take another --format');
};
