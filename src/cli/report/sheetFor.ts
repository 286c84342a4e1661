import type { EngineReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { OfferedParts } from '../../documents/parts/offeredPart.ts';
import { machineShopPage } from '../../output/plan/machineShopPage.ts';
import { standing } from '../../output/plan/planPage.ts';
import { customerSheet } from '../../output/report/customerSheet.ts';
import { factsOf, type Origin } from '../../output/report/facts.ts';
import { type Links, NO_LINKS } from '../../output/report/links.ts';
import { pageSheet } from '../../output/report/pageSheet.ts';
import type { Reader, Sheet } from '../../output/report/sheet.ts';
import { shopSheet } from '../../output/report/shopSheet.ts';
import { pistonsFor } from '../../plan/fit/fits.ts';
import { workPlan } from '../../plan/work/workPlan.ts';

/** Who asks, and as of when; the page itself says which engine and which job. */
const OF_AN_ORDER: readonly string[] = ['shop', 'as of', 'commit'];

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
export function sheetFor(reader: Reader, { report, origin, engine, links, offers }: SheetSource): Sheet {
  const { state, registry } = report;
  if (state === undefined) throw new Error('an engine without a session has no sheet');
  switch (reader) {
    case 'shop':
      return shopSheet(report, state, origin, { links, withCustomer: true });
    case 'customer':
      return customerSheet(report, state, origin);
    case 'machine-shop': {
      const made = workPlan(report.engine, registry, state);
      const about = [standing(report.engine, made.at)];
      const facts = factsOf(report, state, reader, origin, false).filter(({ name }) =>
        OF_AN_ORDER.includes(name),
      );
      return pageSheet(
        machineShopPage({ ...made, engine }, pistonsFor(made.context, offers()), about),
        reader,
        facts,
        NO_LINKS,
      );
    }
  }
}
