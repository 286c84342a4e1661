import { UNMEASURED } from '../../checks/judge/session.ts';
import type { PlanContext } from '../work/context.ts';
import type { Unmeasured } from '../work/measuring/unmeasured.ts';
import { boxesOf } from './boxes.ts';
import { boxOfTest, untestedShaft } from './untestedShaft.ts';

/** What the page before closing up calls so as well. */
export function unmeasuredOf(context: PlanContext): readonly Unmeasured[] {
  const { registry, state } = context;
  const { findings, lastKnown, run } = state;
  const opened = run[0]?.date ?? '';
  const known = lastKnown.filter(({ date }) => date >= opened).map(({ row }) => row);
  const ids = new Set(
    findings.flatMap(({ code, measure }) => (code === UNMEASURED.code ? (measure ?? []) : [])),
  );
  const unmeasured = [...ids].flatMap((id) => {
    const characteristic = registry.find(id);
    const ended = known.flatMap((row) => (row.characteristic.id === id ? row.position : []));
    return characteristic === undefined ? [] : [{ characteristic, ended: [...new Set(ended)] }];
  });
  return [...unmeasured, ...untestedOf(context)];
}

function untestedOf(context: PlanContext): readonly Unmeasured[] {
  const untested = untestedShaft(context);
  if (untested === undefined) return [];
  const box = boxesOf(context).find(({ what }) => what === boxOfTest(untested));
  if (box?.by !== undefined) return [];
  return [{ characteristic: untested.characteristic, ended: [], askedBy: untested.work.text }];
}

/** At a rebuild all of it; before that a test after work, and what was read once in this run but for what is read of assembled parts alone. */
export const isDue = (
  { characteristic: { isAssemblyFigure }, ended, askedBy }: Unmeasured,
  { state }: PlanContext,
): boolean =>
  askedBy !== undefined ||
  state.session.stage === 'rebuild' ||
  (ended.length > 0 && isAssemblyFigure !== true);
