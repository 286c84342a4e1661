import type { EngineReport } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import { PLAN_FORMATS } from '../../output/plan/formats/index.ts';
import { reportWithPlan } from '../../plan/reportWithPlan.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';
import { offersFor } from '../parts/offers.ts';
import { noSession } from '../shop/noSession.ts';
import { type OpenedEngine, openEngine } from '../shop/resolveShop.ts';
import { type PageChoice, pageOf } from './pages.ts';
import { upTo } from './upTo.ts';

export interface PlanOptions extends PageChoice {
  readonly format: readonly FormatChoice[];
  readonly session?: string;
  readonly at?: string;
}

/** Prints what is to be done to an engine; 1 where something must be, 2 where a document has a problem. */
export async function plan(name: string | undefined, options: PlanOptions, world: World): Promise<number> {
  const opened = openEngine(name, world, options.at);
  const engine = options.session === undefined ? opened.engine : upTo(opened.engine, options.session);
  const { registry, found } = opened;
  const { isOpen, ...page } = pageOf(options, reportOf(engine, opened), opened.engine, () =>
    offersFor(found, { engine, registry }),
  );
  const exit = opened.hasProblems ? 2 : isOpen ? 1 : 0;
  await printFormats(PLAN_FORMATS, options.format, { ...page, exit }, world);
  return exit;
}

function reportOf(engine: Engine, opened: OpenedEngine): EngineReport {
  const report = reportWithPlan(engine, opened.registry, {});
  if (report.state !== undefined) return report;
  throw noSession(opened);
}
