import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { OfferedParts } from '../../documents/parts/offeredPart.ts';
import { closingPage } from '../../output/plan/closingPage.ts';
import { machineShopPage } from '../../output/plan/handover/machineShopPage.ts';
import { afterNotTaken } from '../../output/plan/notTaken.ts';
import type { Page } from '../../output/plan/page.ts';
import { standing } from '../../output/plan/planPage.ts';
import { customerSheet } from '../../output/report/customerSheet.ts';
import { factsOf, type Origin } from '../../output/report/facts.ts';
import { type Links, NO_LINKS } from '../../output/report/links.ts';
import { pageSheet } from '../../output/report/pageSheet.ts';
import { items, type Reader, type Sheet, section } from '../../output/report/sheet.ts';
import { shopSheet } from '../../output/report/shopSheet.ts';
import { statusOf } from '../../output/report/status.ts';
import { closingOf } from '../../plan/closing/closing.ts';
import { pistonsFor } from '../../plan/fit/fits.ts';
import { agreementsOf } from '../../plan/handover/agreement.ts';
import { type WorkPlan, workPlan } from '../../plan/work/workPlan.ts';

/** Of whom it is for, or the page before an engine is closed up. */
export type SheetKind = Reader | 'closing';

export interface SheetSource {
  readonly report: EngineReport;
  readonly origin: Origin;
  /** Whole: what was agreed to later is agreed to. */
  readonly engine: Engine;
  readonly links: Links;
  /** Parts of the shelf with documents of their own. */
  readonly offers: () => OfferedParts;
}

/** The sheet of an engine that has a session. */
export function sheetFor(kind: SheetKind, source: SheetSource): Sheet {
  const { report, origin, engine, links, offers } = source;
  const { state } = report;
  if (state === undefined) throw new Error('an engine without a session has no sheet');
  switch (kind) {
    case 'shop':
      return shopSheet(report, state, origin, { links, withCustomer: true });
    case 'customer':
      return customerSheet(report, state, origin);
    case 'machine-shop':
      return planSheet(source, state, ORDER_FACTS, (made, about) =>
        machineShopPage(
          made,
          agreementsOf(engine, report.registry, made.at),
          pistonsFor(made.context, offers()),
          about,
        ),
      );
    case 'closing':
      return closingSheet(source, state);
  }
}

/** Who asks, and as of when; the page itself says which engine and which job. */
const ORDER_FACTS: readonly string[] = ['shop', 'as of', 'commit'];

const CLOSING_FACTS: readonly string[] = [...ORDER_FACTS, 'engine no.', 'job', 'hours'];

function closingSheet(source: SheetSource, state: StateReport): Sheet {
  const { report } = source;
  const closing = closingOf(report, state);
  const page = planSheet(source, state, CLOSING_FACTS, (_, about) =>
    closingPage(closing, report.engine, about),
  );
  return {
    ...page,
    status: statusOf(report.engine, state, closing),
    sections: [...page.sections, ...section('Closed up', items('blanks', ['by', 'date and signature']))],
  };
}

/** A page of `plan`, to be handed over alone. */
function planSheet(
  { report, origin }: SheetSource,
  state: StateReport,
  named: readonly string[],
  pageOf: (made: WorkPlan, about: readonly string[]) => Page,
): Sheet {
  const made = workPlan(report.engine, report.registry, state);
  const page = pageOf(made, [standing(report.engine, made.at)]);
  const facts = factsOf(report, state, 'machine-shop', origin, false);
  return {
    ...pageSheet(
      { ...page, answer: afterNotTaken(report.engine, page.answer) },
      facts.filter(({ name }) => named.includes(name)),
      NO_LINKS,
    ),
    isOneSide: true,
  };
}
