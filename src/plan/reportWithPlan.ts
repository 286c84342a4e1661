import type { Registry } from '../characteristics/registry.ts';
import { type Finding, sortFindings } from '../checks/finding.ts';
import { type EngineReport, reportEngine, type StateReport } from '../checks/judge/report.ts';
import type { JudgingOptions } from '../checks/judge/row.ts';
import { once } from '../checks/once.ts';
import type { Engine } from '../documents/assemble.ts';
import { releasedOpen } from './closing/released.ts';
import { strangeBoxes } from './closing/strangeBoxes.ts';
import { agreedFindings } from './handover/agreedFindings.ts';
import { judgedOnce } from './handover/judgedOnce.ts';
import { strangeSendings } from './handover/sendings.ts';
import { planContext } from './work/context.ts';

/** An engine judged, with what its plan has to say of the documents beside what checks have. */
export function reportWithPlan(engine: Engine, registry: Registry, options: JudgingOptions): EngineReport {
  const isByItsOwnRules = options.rule === undefined && options.judgeBy === undefined;
  const report = isByItsOwnRules ? judgedOnce(engine)(registry) : reportEngine(engine, registry, options);
  const state = once(() => report.state && withPlanFindings(report, report.state));
  return {
    engine,
    registry,
    rule: report.rule,
    sessions: report.sessions,
    followUps: report.followUps,
    get state() {
      return state();
    },
  };
}

const withPlanFindings = (report: EngineReport, state: StateReport): StateReport => {
  const { engine, registry } = report;
  const ofAgreements = withFindings(state, [
    ...agreedFindings(report, state),
    ...strangeSendings(engine, state),
    ...(isAnyBoxNamed(engine, state) ? strangeBoxes(planContext(engine, registry, state)) : []),
  ]);
  return withFindings(ofAgreements, releasedOpen(report, ofAgreements));
};

/** Most engines have none: no plan is made for them. */
const isAnyBoxNamed = ({ document, planning }: Engine, { run }: StateReport): boolean =>
  planning.required.length > 0 ||
  [document, ...run].some(({ handedOver }) => handedOver.confirmed.length > 0);

const withFindings = (state: StateReport, own: readonly Finding[]): StateReport => ({
  ...state,
  findings: sortFindings([...state.findings, ...own]),
});
