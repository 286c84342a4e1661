import type { Characteristic } from '../../characteristics/characteristic.ts';
import { UNMEASURED } from '../../checks/judge/session.ts';
import type { Position } from '../../layout/position.ts';
import type { PlanContext } from '../work/context.ts';

/** A figure that has limits and no value. */
export interface Unmeasured {
  readonly characteristic: Characteristic;
  /** Where it had one since the engine was opened, before work ended it; none where it never had. */
  readonly ended: readonly Position[];
}

/** What the page before closing up calls so as well. */
export function unmeasuredOf({ registry, state }: PlanContext): readonly Unmeasured[] {
  const { findings, rows, lastKnown, run } = state;
  const opened = run[0]?.date ?? '';
  // Of a test that has to be made again the row still stands.
  const known = [...rows, ...lastKnown.filter(({ date }) => date >= opened).map(({ row }) => row)];
  const ids = new Set(
    findings.flatMap(({ code, measure }) => (code === UNMEASURED.code ? (measure ?? []) : [])),
  );
  return [...ids].flatMap((id) => {
    const characteristic = registry.find(id);
    const ended = known.flatMap((row) => (row.characteristic.id === id ? row.position : []));
    return characteristic === undefined ? [] : [{ characteristic, ended: [...new Set(ended)] }];
  });
}

/** At a rebuild all of it; before that what was read once in this run, but for what is read of assembled parts alone. */
export const isDue = (
  { characteristic: { isAssemblyFigure }, ended }: Unmeasured,
  { state }: PlanContext,
): boolean => state.session.stage === 'rebuild' || (ended.length > 0 && isAssemblyFigure !== true);
