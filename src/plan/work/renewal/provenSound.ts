import type { Part } from '../../../layout/part.ts';
import type { PlanContext } from '../context.ts';
import { isCrackTest } from './cracked.ts';

/** Whether a part passed its crack test: one that work has voided stands no longer. */
export function isProvenSound({ state }: PlanContext, part: Part): boolean {
  const tests = state.rows.filter(
    ({ characteristic }) => characteristic.of === part.id && isCrackTest(characteristic),
  );
  return tests.length > 0 && tests.every(({ judgement }) => judgement.verdict === 'ok');
}
